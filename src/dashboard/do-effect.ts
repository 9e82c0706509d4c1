import type { Refusal } from "../acts/refusal.ts";
import type { ActRequest } from "../acts/request.ts";
import { plainText } from "../words/plain-text.ts";
import { readPlace } from "../words/read-place.ts";
import { sayCaution } from "../words/say-caution.ts";
import { sayDone } from "../words/say-done.ts";
import { capital } from "../words/say-list.ts";
import { sayReckoned } from "../words/say-reckoned.ts";
import { sayRefusal } from "../words/say-refusal.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { askMeasure } from "./ask-measure.ts";
import { askMend } from "./ask-mend.ts";
import { askPlace } from "./ask-place.ts";
import { numbered } from "./numbered.ts";
import { hangAt, hangOf } from "./requests.ts";
import type { Effect, Happened } from "./state.ts";

/** Refusals that the maker may go on against, with a reason. */
const MAY_GO_ON: readonly Refusal["code"][] = ["held", "too early", "too late"];

/** Does one effect and tells what came of it. Reading and quitting are the loop's own. */
export async function doEffect(
  effect: Exclude<Effect, { do: "read" | "quit" }>,
  workshop: Workshop,
  speech: Speech,
): Promise<Happened> {
  switch (effect.do) {
    case "perform":
      return perform(asOfNow(effect.request, speech), workshop, speech);
    case "clock is right":
      workshop.clockIsRight();
      return { is: "told", message: { text: "The clock is taken as right.", tone: "done" } };
    case "mend":
      return askMend(effect.tags, effect.mend, workshop, speech);
    case "measure":
      return askMeasure(effect.tags, effect.step, workshop);
    case "place":
      return askPlace(effect.tags, workshop, speech);
    case "place named":
      return hangAtNamed(effect, workshop, speech);
    case "type":
      return {
        is: "overlay",
        overlay: { is: "type", title: effect.title, typed: "", purpose: effect.purpose },
      };
    case "tag":
      return tagNew(effect.process, effect.name, workshop, speech);
    case "sheet": {
      const { sheetLines } = await import("./sheet-lines.ts");
      const lines = await sheetLines(effect.tags, effect.step, workshop, speech);
      return { is: "overlay", overlay: { is: "text", title: "Set-up sheet", lines, top: 0 } };
    }
    case "days": {
      const { daysLines } = await import("./days-lines.ts");
      const { about, again, columns } = effect;
      return { is: "days", lines: await daysLines(workshop, speech, columns), about, again };
    }
    case "week": {
      const { weekLines } = await import("./week-lines.ts");
      const lines = await weekLines(workshop, speech);
      return { is: "overlay", overlay: { is: "text", title: "The week", lines, top: 0 } };
    }
  }
}

/** A slip of the keys must not lose a piece its hook and its air: a place that nothing names is none. */
async function hangAtNamed(
  { tags, said, hang }: Extract<Effect, { do: "place named" }>,
  workshop: Workshop,
  speech: Speech,
): Promise<Happened> {
  const [{ processes }, shop] = await Promise.all([workshop.readLibrary(), workshop.shop()]);
  const read = readPlace(said, processes, shop);
  if ("found" in read) return perform(hangAt(tags, read.found, hang, speech.now), workshop, speech);
  return { is: "told", message: { text: plainText(`${capital(read.problem)}.`), tone: "refused" } };
}

/** The clock may have been set once more since it was asked about. */
function asOfNow(request: ActRequest, { now }: Speech): ActRequest {
  return request.act === "clock" ? { ...request, at: now } : request;
}

async function perform(request: ActRequest, workshop: Workshop, speech: Speech): Promise<Happened> {
  const before = await workshop.shop();
  const outcome = await workshop.perform(request);
  if ("refusal" in outcome) return refused(outcome.refusal, request, workshop, speech);
  return {
    is: "told",
    message: { text: sayDone(outcome.events, outcome.shop, speech, before).join(" "), tone: "done" },
  };
}

async function refused(
  refusal: Refusal,
  request: ActRequest,
  workshop: Workshop,
  speech: Speech,
): Promise<Happened> {
  if (refusal.code === "read the caution") {
    const [{ cautions }, shop] = await Promise.all([workshop.rules(), workshop.shop()]);
    const lines = refusal.cautions.flatMap((name, index) => {
      const caution = cautions[name];
      const said = caution === undefined ? [name] : sayCaution(caution, sayReckoned(name, shop, speech));
      return [...(index === 0 ? [] : [""]), ...said];
    });
    return { is: "unread", cautions: refusal.cautions, lines, request };
  }
  if (refusal.code === "no such answer" && request.act === "hang") return askAnswer(refusal.answers, request);
  if (refusal.code === "several steps fit" && "step" in request) return askStep(refusal, request);
  const mayGoOn = MAY_GO_ON.includes(refusal.code) && "anyway" in request;
  return { is: "refused", text: sayRefusal(refusal, speech), request, mayGoOn };
}

/** A step with answers is hung by choosing one. */
function askAnswer(answers: readonly string[], request: Extract<ActRequest, { act: "hang" }>): Happened {
  const choices = answers.map((answer, index) => ({
    key: String(index + 1),
    label: `${index + 1}  ${answer}`,
    effects: [{ do: "perform" as const, request: hangOf(request.tags, request.at, { result: answer }) }],
  }));
  return { is: "overlay", overlay: { is: "choose", title: "With what result?", lines: [], choices } };
}

/** A tag that could go on with several steps is asked which: the keys name none. */
function askStep(
  { tag, steps }: Extract<Refusal, { code: "several steps fit" }>,
  request: Extract<ActRequest, { step: string | null }>,
): Happened {
  const choices = numbered(steps, (step) => ({
    label: plainText(step),
    effect: { do: "perform", request: { ...request, step } },
  }));
  const title = `Which step of ${tag}?`;
  return { is: "overlay", overlay: { is: "choose", title, lines: [], choices } };
}

/** A new piece like the newest of its process: its name and scheme are asked nothing of, and changed later. */
async function tagNew(
  process: string,
  name: string | null,
  workshop: Workshop,
  speech: Speech,
): Promise<Happened> {
  const { processes } = await workshop.readLibrary();
  const found = processes.find(({ definition }) => definition.name === process);
  if (found === undefined) {
    return { is: "told", message: { text: `There is no process ${process} any more.`, tone: "refused" } };
  }
  if (name === null) {
    return {
      is: "overlay",
      overlay: {
        is: "type",
        title: `Name of the new ${process} (Enter: ${process})`,
        typed: "",
        purpose: { for: "name", process },
      },
    };
  }
  const request: ActRequest = {
    act: "tag",
    at: speech.now,
    process: found,
    count: 1,
    name,
    scheme: [],
    due: null,
    price: null,
    for: null,
    hung: null,
  };
  return perform(request, workshop, speech);
}
