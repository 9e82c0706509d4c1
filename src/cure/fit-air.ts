import type { Air } from "../process/quantity-form.ts";
import { dewPoint } from "./humid-air.ts";

/**
 * Degrees by which a surface should be warmer than the dew point before it is coated: 3 °C (5 °F). MIL-HDBK-1110 (US
 * Department of Defense, paints and protective coatings), 9.6.6. A rule for steel; for small painted wood it is our
 * extension, and one maker of water-borne paint is content with 2 °C, so the maker may say another.
 */
export const DEW_MARGIN = 3;

/** The same as it is told, with its source. */
export const DEW_RULE = `${DEW_MARGIN} °C or 5 °F by MIL-HDBK-1110, 9.6.6, for steel; carried over to small painted wood`;

/** How a surface stands to dew: wet below its dew point, and how much warmer it is, in °C. */
export interface DewMargin {
  readonly dewPoint: number;
  readonly margin: number;
  readonly isFit: boolean;
}

/**
 * Whether a surface is warm enough above the dew point of the air to be coated.
 *
 * @param surfaceCelsius of the piece; one that has hung there for hours is as warm as the air
 * @example dewMargin({ celsius: 16, humidityPercent: 71 }, 13, 3) // 2.3 above 10.7: not fit
 */
export function dewMargin(air: Air, surfaceCelsius: number, wanted: number): DewMargin {
  const dew = dewPoint(air);
  const margin = surfaceCelsius - dew;
  return { dewPoint: dew, margin, isFit: margin >= wanted };
}
