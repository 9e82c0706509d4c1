/**
 * Kelvin of a temperature in °C. With 273 in place of 273.15 an equivalent age shifts by 0.06 %.
 *
 * @example toKelvin(20) // 293.15
 */
export const toKelvin = (celsius: number): number => celsius + 273.15;
