/** Money of the shop, from its smallest unit. `sayMoney(2850) === "28.50"` */
export function sayMoney(smallest: number): string {
  const digits = String(Math.abs(smallest)).padStart(3, "0");
  return `${smallest < 0 ? "-" : ""}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

/**
 * Money as a maker writes it, in the smallest unit; null: not an amount. A sign of currency may stand before or after.
 *
 * @example readMoney("28") // 2800
 * @example readMoney("£28,50") // 2850
 */
export function readMoney(text: string): number | null {
  const found = /^\p{Sc}?\s*(\d{1,9})(?:[.,](\d{1,2}))?\s*\p{Sc}?$/u.exec(text.trim());
  if (found === null) return null;
  const [, whole = "", cents = ""] = found;
  return Number(whole) * 100 + Number(cents.padEnd(2, "0"));
}
