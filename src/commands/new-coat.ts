import { join } from "node:path";
import type { Coat } from "../process/coat.ts";
import { writeCoat } from "../process/write-coat.ts";
import { matchIn } from "../words/match-in.ts";
import { ownProcesses } from "../workshop/library.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { unfitName, writeOwnFile } from "./own-file.ts";

/** What a coat begins as where none is named: a brushing varnish whose times are still to be taken from its sheet. */
const BLANK: Coat = {
  name: "",
  curesBy: "solvent",
  sheetAir: { celsius: 21, humidityPercent: 50 },
  lowestCelsius: 10,
  activationEnergy: null,
  feelFirst: false,
  stages: { "dust-free": 45, "tack-free": 120, "dry-hard": 720 },
  windows: [{ opens: 240, shuts: 1440, first: null }],
  flashOff: 0,
  givesOff: [{ what: "solvent vapour", lasts: 40 }],
  cautions: ["solvent vapour"],
  sheet: {},
  source: "a beginning only: put the times of your can's sheet here",
};

/** `coat new NAME [--from COAT]`: writes a coat file of the maker's own. */
export async function newCoat(words: CommandWords, bench: Bench): Promise<Answer> {
  const name = words.needRest('say what it is called: coat new "my varnish"');
  const unfit = unfitName(name);
  if (unfit !== null) words.problems.push(unfit);
  if (words.problems.length > 0) return { problems: words.problems };
  const { workshop } = await bench.open();
  const { coats } = await workshop.readLibrary();
  if (coats.some(({ coat, shipped }) => coat.name === name && !shipped)) {
    return { problems: [`there is a coat "${name}" of your own already: edit its file`] };
  }
  const from = words.option("from");
  const found =
    from === null ? { found: { coat: BLANK } } : matchIn("coat", from, coats, ({ coat }) => coat.name);
  if ("problem" in found) return { problems: [found.problem] };
  const folder = join(ownProcesses(workshop.places.data), "coats");
  const written = writeOwnFile(folder, name, writeCoat({ ...found.found.coat, name }));
  if ("problem" in written) return { problems: [written.problem] };
  return {
    text: [`Written: ${written.file}. Edit it, then dryline coat check "${name}".`],
    json: { file: written.file },
  };
}
