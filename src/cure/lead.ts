/** Lead: matmake.com's table of lead, which cites the CRC Handbook of Chemistry and Physics, 97th edition. */
export const LEAD = {
  meltsAtCelsius: 327.46,
  /** Grams in a cubic centimetre, liquid at its melting point and solid at 20 °C. */
  liquidDensity: 10.66,
  solidDensity: 11.34,
} as const;

/** Kilojoules that a mole of it gives off as it sets, and the grams in a mole: the same table. */
const FUSION = 4.77;
const MOLE = 207.2;

/** Joules that a gram of lead gives off as it sets, before it is any cooler than when it melts: 23.0. */
export const LEAD_SETTING = (FUSION / MOLE) * 1_000;
