import { fstatSync } from "node:fs";

/**
 * Whether a stream may be a terminal: quickly told, where it is none, without making Node's stream object. Plain
 * JavaScript, as the launcher asks it too.
 *
 * @param {0 | 1 | 2} descriptor
 * @returns {boolean}
 */
export function mayBeTerminal(descriptor) {
  try {
    return fstatSync(descriptor).isCharacterDevice();
  } catch {
    return false;
  }
}
