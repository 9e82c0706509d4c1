/** Grams in an ounce: the international pound of 453.59237 g by 16, by definition (from memory, not looked up). */
export const GRAMS_PER_OUNCE = 28.349_523_125;

/** By definition since 1959 (from memory, not looked up). */
export const MILLIMETRES_PER_INCH = 25.4;
