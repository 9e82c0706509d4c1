import type { Setting } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { checkSetting } from "./check-setting.ts";
import { type Decision, decided } from "./decision.ts";
import { isSettled } from "./is-settled.ts";
import { refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** What is so already, in words for a refusal. */
const SETTLED: Readonly<Record<Setting["of"], string>> = {
  hours: "the bench hours of every week",
  day: "the bench hours of that day",
  away: "the days away",
  back: "no days away are ahead",
  zone: "the clock of the shop",
  hands: "the pairs of hands",
  place: "the hooks of that place",
  aim: "the aim",
  "default process": "what new pieces are",
  air: "the air that is stated",
  "dew margin": "the margin over the dew point",
  room: "how that room clears",
  "in room": "which room it is in",
  touches: "whether touch tests count",
};

/** Settles something of the shop from a date on. What is so already is said, not written again. */
export function decideSettle(request: ActOf<"settle">, shop: Shop): Decision {
  const setting = inOrder(request.setting);
  const unfit = checkSetting(setting);
  if (unfit) return unfit;
  if (isSettled(setting, shop.settings))
    return refuse({ code: "nothing changes", what: SETTLED[setting.of] });
  return decided([{ kind: "settled", at: request.at, tag: null, station: null, setting }], shop);
}

/** Sessions of a day by opening, however they were said: "Sat 13-16 9-12". */
function inOrder(setting: Setting): Setting {
  const sorted = <T extends { readonly opens: number }>(day: readonly T[]) =>
    day.toSorted((a, b) => a.opens - b.opens);
  if (setting.of === "hours") return { ...setting, weekly: setting.weekly.map(sorted) };
  if (setting.of === "day" && setting.hours) return { ...setting, hours: sorted(setting.hours) };
  return setting;
}
