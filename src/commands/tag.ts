import type { Tag } from "../journal/event.ts";
import type { Piece } from "../shop/shop.ts";
import { matchIn } from "../words/match-in.ts";
import { readScheme } from "../words/read-scheme.ts";
import { readTags } from "../words/read-tags.ts";
import type { LibraryProcess } from "../workshop/library.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Bench } from "./bench.ts";
import { type Answer, type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";
import { readDue } from "./read-due.ts";

/**
 * New pieces get their numbers; or, with tags in place of a process, what stands on those tags is changed. A piece that
 * hung before dryline came is taken where it is, by the step it was last hung from.
 */
export const tag: Command = {
  usage: ["tag [PROCESS]", "tag --like TAG", "tag TAGS"],
  says: "gives new pieces their tags, or changes what stands on tags",
  options: {
    name: { value: "NAME", says: "what the piece is called" },
    count: { value: "NUMBER", says: "how many pieces" },
    like: { value: "TAG", says: "another like this one: process, name, scheme and price" },
    scheme: { value: "COLOURS", says: 'how it is painted: "ochre 10/5, green 6"' },
    due: { value: "DATE", says: "when it must be finished: Friday, 3 May" },
    price: { value: "MONEY", says: "what it is to bring" },
    for: { value: "WHOM", says: "whom it is for" },
    hung: { value: "STEP", says: "it hangs already: the step it was last hung from" },
    since: { value: "TIME", says: 'since when it hangs: "yesterday 20:00"' },
    ...WHEN,
  },
  examples: [
    ['tag "carved walker"', "one new piece"],
    ['tag "carved walker" --name smelt --count 3 --due Friday --price 28', "three, named and promised"],
    ["tag --like 14", "another like 14, painted as 14 was"],
    ['tag walker --hung "first clear" --since "yesterday 20:00"', "a piece that was hanging before"],
    ["tag 14 --due Friday --name dace", "changes what stands on tag 14"],
    ["tag 14 --due none --price none", "takes off what stood there"],
  ],
  async run(words, bench) {
    const tags = words.tags();
    return tags.length > 0 ? change(tags, words, bench) : tagNew(words, bench);
  },
};

/** New pieces: of a process named, of one like another piece, or of the shop's usual one. */
async function tagNew(words: CommandWords, bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const like = await readLike(words, workshop);
  const process = await readProcessNamed(words, like, workshop);
  const hung = words.option("hung");
  if (hung !== null) words.needOption("since", 'say since when it hangs: --since "yesterday 20:00"');
  if (hung === null && words.has("since"))
    words.problems.push('say what it was hung from: --hung "first clear"');
  const since = words.moment("since", speech) ?? speech.now;
  if (process === null) return { problems: words.problems };
  const at = words.when(speech);
  return perform(words, bench, {
    act: "tag",
    at,
    process,
    count: words.count("count") ?? 1,
    name: words.option("name") ?? like?.name ?? null,
    scheme: readSchemeOf(words) ?? like?.scheme ?? [],
    due: readDue(words.option("due"), speech, words, at),
    price: words.money("price") ?? like?.price ?? null,
    for: words.option("for"),
    hung: hung === null ? null : { step: hung, since },
  });
}

/** Changes only what was said; the rest of each tag stays as it is. */
async function change(tags: readonly Tag[], words: CommandWords, bench: Bench): Promise<Answer> {
  const { speech } = await bench.open();
  for (const option of ["count", "like", "hung", "since"]) {
    if (words.has(option)) words.problems.push(`--${option} is for new pieces: say the process, not tags`);
  }
  const said = ["name", "scheme", "due", "price", "for"].filter((option) => words.has(option));
  if (said.length === 0)
    words.problems.push("say what changes on the tag: --name, --scheme, --due, --price or --for");
  const at = words.when(speech);
  const [name, due, price, whom, scheme] = [
    words.option("name"),
    isNone(words, "due") ? null : readDue(words.option("due"), speech, words, at),
    isNone(words, "price") ? null : words.money("price"),
    isNone(words, "for") ? null : words.option("for"),
    readSchemeOf(words),
  ];
  return perform(words, bench, {
    act: "change",
    at,
    tags,
    ...(name === null ? {} : { name }),
    ...(due === null && !isNone(words, "due") ? {} : { due }),
    ...(price === null && !isNone(words, "price") ? {} : { price }),
    ...(whom === null && !isNone(words, "for") ? {} : { for: whom }),
    ...(scheme === null ? {} : { scheme }),
  });
}

/** Whether it is said that a tag has no such thing any more. */
function isNone(words: CommandWords, option: "due" | "price" | "for"): boolean {
  return /^none$/i.test(words.option(option) ?? "");
}

function readSchemeOf(words: CommandWords): Piece["scheme"] | null {
  const said = words.option("scheme");
  if (said === null) return null;
  const read = readScheme(said);
  if ("problem" in read) words.problems.push(read.problem);
  return "scheme" in read ? read.scheme : null;
}

/** The piece that the new one shall be like, whatever became of it since; null: none was said or it is not there. */
async function readLike(words: CommandWords, workshop: Workshop): Promise<Piece | null> {
  const said = words.option("like");
  if (said === null) return null;
  const [like, ...more] = readTags(said) ?? [];
  const piece =
    like === undefined || more.length > 0
      ? undefined
      : (await workshop.shop({ of: "tags", tags: [like] })).pieces.get(like);
  if (piece === undefined)
    words.problems.push(`--like "${said}" is no tag of a piece: say one, as --like 14`);
  return piece ?? null;
}

type Named = Pick<LibraryProcess, "hash" | "definition">;

/** The process said, else that of the piece it is to be like (the very version), else the shop's usual one. */
async function readProcessNamed(
  words: CommandWords,
  like: Piece | null,
  workshop: Workshop,
): Promise<Named | null> {
  const said = words.rest();
  if (said === null && like !== null) return like;
  if (said === null && words.has("like")) return null;
  const { processes, problems } = await workshop.readLibrary();
  const usual = (await workshop.shop()).settings.defaultProcess;
  const only = processes.length === 1 ? processes[0]?.definition.name : undefined;
  const wanted = said ?? usual ?? only;
  if (wanted === undefined) {
    words.problems.push('say which process: tag "carved walker"; "dryline process" lists them');
    return null;
  }
  const found = matchIn("process", wanted, processes, ({ definition }) => definition.name);
  // It may be in a file that cannot be used: that one is then what is wrong.
  const unread = problems.length === 0 ? "" : "; some files cannot be used, dryline process check says why";
  if ("problem" in found) words.problems.push(`${found.problem}${unread}`);
  return "found" in found ? found.found : null;
}
