import type { Instant } from "../time/instant.ts";

/** What makes air unfit to lay a coat in, and when: as it is laid, or while it is still wet. */
export type Unfit = {
  readonly coat: string;
  readonly at: Instant;
  /** Expected of the hours in which the coat is wet, after it was laid. */
  readonly isAhead: boolean;
} & (
  | { readonly is: "too cold"; readonly celsius: number; readonly lowestCelsius: number }
  | { readonly is: "too warm"; readonly celsius: number; readonly highestCelsius: number }
  | { readonly is: "too damp"; readonly humidityPercent: number; readonly dampestPercent: number }
  | { readonly is: "dew"; readonly celsius: number; readonly dewPoint: number; readonly wanted: number }
);

/** How figures are said: in whose units, and by whose clock. */
export interface UnfitSpeech {
  readonly degrees: (celsius: number) => string;
  readonly difference: (celsius: number) => string;
  /** `at 23:15`, `in 2 h` */
  readonly when: (at: Instant) => string;
}

/**
 * Why a coat is not to be laid in this air.
 *
 * @example sayUnfit(cold, metric) // "the air is at 8.5 °C and varnish wants 10 °C or more"
 * @example sayUnfit(ahead, metric) // "the air is expected at 8.5 °C at 23:15, and varnish wants 10 °C or more till it is dust-free"
 */
export function sayUnfit(unfit: Unfit, { degrees, difference, when }: UnfitSpeech): string {
  const { coat, isAhead, at } = unfit;
  const till = isAhead ? " till it is dust-free" : "";
  const air = (figure: string) =>
    isAhead ? `the air is expected at ${figure} ${when(at)}` : `the air is at ${figure}`;
  const wants = (figure: string, most: string) =>
    `${isAhead ? "," : ""} and ${coat} wants ${figure} or ${most}${till}`;
  switch (unfit.is) {
    case "too cold":
      return `${air(degrees(unfit.celsius))}${wants(degrees(unfit.lowestCelsius), "more")}`;
    case "too warm":
      return `${air(degrees(unfit.celsius))}${wants(degrees(unfit.highestCelsius), "less")}`;
    case "too damp":
      return `${air(percent(unfit.humidityPercent))}${wants(percent(unfit.dampestPercent), "less")}`;
    case "dew":
      return `${air(degrees(unfit.celsius))}, its dew point at ${degrees(unfit.dewPoint)}: a surface wants ${difference(unfit.wanted)} between them${till}`;
  }
}

const percent = (figure: number): string => `${Math.round(figure)} %`;

/** What the maker can do about it. */
export function remedyOf({ is, isAhead }: Unfit): string {
  const what = isAhead ? "the place it hangs in" : "the shop";
  if (is === "too cold") return `warm ${what}`;
  if (is === "too warm") return `cool ${what}`;
  return `warm ${what} or dry its air`;
}
