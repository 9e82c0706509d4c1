import type { Air } from "../process/quantity-form.ts";

/**
 * Moisture, in percent of its dry weight, that wood comes to in air that stays as it is: Wood Handbook, USDA Forest
 * Products Laboratory, FPL-GTR-282 (2021), Eq. (4-5) with the coefficients for °C.
 *
 * It holds mainly for Sitka spruce, midway between wetting and drying, and shows trends: guidance, never in place of
 * a meter. How long wood takes to come there, it does not say.
 *
 * @example equilibriumMoisture({ celsius: 20, humidityPercent: 65 }) // 12.0
 */
export function equilibriumMoisture({ celsius: t, humidityPercent }: Air): number {
  const w = 349 + 1.29 * t + 0.0135 * t ** 2;
  const k = 0.805 + 0.000_736 * t - 0.000_002_73 * t ** 2;
  const k1 = 6.27 - 0.009_38 * t - 0.000_303 * t ** 2;
  const k2 = 1.91 + 0.0407 * t - 0.000_293 * t ** 2;
  const kh = (k * humidityPercent) / 100;
  const single = kh / (1 - kh);
  const bound = k1 * kh + 2 * k1 * k2 * kh ** 2;
  return (1800 / w) * (single + bound / (1 + k1 * kh + k1 * k2 * kh ** 2));
}
