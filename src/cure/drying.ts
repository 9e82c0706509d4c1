import { type HangingAir, SHEET_AIR } from "./hanging-air.ts";

/** How a coat dries where it hangs. */
export interface Drying {
  readonly air: HangingAir;
  /** How many times the minutes of its sheet it needs, as touch tests have found. */
  readonly factor: number;
}

/** Nothing is known but the sheet. */
export const AS_BY_SHEET: Drying = { air: SHEET_AIR, factor: 1 };
