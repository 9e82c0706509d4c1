import type { SetUp } from "../process/step.ts";

/**
 * What a set-up is called with its colour filled in: two pieces share one only where these words are equal.
 * `load {colour}` in ochre is `load ochre`; where no colour is said, `load colour`.
 */
export function setUpWords(setUp: Pick<SetUp, "do">, colour: string | null): string {
  return setUp.do.replaceAll("{colour}", colour ?? "colour");
}
