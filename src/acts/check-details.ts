import type { SchemePass } from "../journal/event.ts";
import { isCivilDate } from "../time/civil.ts";
import type { CivilDate, Minutes } from "../time/instant.ts";
import { checkName, checkThat, checkWhole } from "./check-value.ts";
import type { Refused } from "./refuse.ts";

/**
 * What a maker says of a piece beside its work.
 *
 * A detail left out is not said; null says there is none.
 */
export interface Details {
  readonly scheme?: readonly SchemePass[];
  readonly due?: CivilDate | null;
  readonly price?: number | null;
  readonly for?: string | null;
}

const MOST_PASSES = 99;
const LONGEST_PASS: Minutes = 24 * 60;
/** In the smallest coin: ten million pounds, euros or dollars. */
const HIGHEST_PRICE = 1_000_000_000;

/** One check for each detail that is said. */
export function checkDetails({ scheme, due, price, for: buyer }: Details): (Refused | null)[] {
  return [
    ...(scheme ?? []).flatMap(checkPass),
    checkThat(
      (scheme ?? []).length <= MOST_PASSES,
      "scheme",
      scheme?.length,
      `at most ${MOST_PASSES} passes`,
    ),
    isSaid(due) ? checkThat(isCivilDate(due), "due", due, "a date such as 2026-05-03") : null,
    isSaid(price) ? checkWhole("price", price, 0, HIGHEST_PRICE) : null,
    isSaid(buyer) ? checkName("for", buyer) : null,
  ];
}

function checkPass({ colour, minutes, flashOff }: SchemePass): (Refused | null)[] {
  return [
    checkName("colour", colour),
    minutes === null ? null : checkWhole(`minutes of ${colour}`, minutes, 0, LONGEST_PASS),
    flashOff === null ? null : checkWhole(`flash-off of ${colour}`, flashOff, 0, LONGEST_PASS),
  ];
}

function isSaid<T>(value: T | null | undefined): value is T {
  return value !== null && value !== undefined;
}
