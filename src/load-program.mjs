/**
 * Loads a bundle together with what V8 compiled of it before. Compiling the everyday functions anew costs a third of a
 * cold start. Part of the launcher, and of the build, which makes the compiled code.
 */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Script } from "node:vm";

/**
 * Where the compiled code of a bundle is kept. It is of use only to the very V8 that made it, and V8 checks of the text
 * no more than its length: so a bundle's name must change with its text.
 *
 * @param {string} bundle path of a CommonJS bundle whose name holds a hash of its text
 * @returns {string} path
 */
export function compiledCodeOf(bundle) {
  return `${bundle}.v8-${process.versions.v8}-${process.arch}`;
}

/**
 * @param {string} bundle path of a CommonJS bundle in ASCII, as the function that Node would make of it; its name holds a
 *   hash of its text
 * @returns {{ script: Script, run: (require: NodeJS.Require) => void }} `run` runs it from the start, each time it is called
 */
export function loadProgram(bundle) {
  const script = new Script(readFileSync(bundle, "latin1"), {
    filename: bundle,
    cachedData: readCompiledCode(bundle),
  });
  const folder = dirname(bundle);
  return {
    script,
    run: (require) => {
      // `import()` does not work in a script with compiled code: the build writes `module.import()` instead.
      const module = {
        exports: {},
        import: (/** @type {string} */ file) => import(pathToFileURL(join(folder, file)).href),
      };
      script.runInThisContext()(module.exports, require, module, bundle, folder);
    },
  };
}

/**
 * @param {string} bundle
 * @returns {Buffer | undefined} undefined: there is none for this V8, and the functions are compiled as they are reached
 */
function readCompiledCode(bundle) {
  try {
    return readFileSync(compiledCodeOf(bundle));
  } catch {
    return undefined;
  }
}
