const CLOCK = /^(\d{1,2})(?:[:.h](\d{2})|h)?\s*(am|pm)?$/i;
const FOUR_DIGITS = /^(\d{2})(\d{2})$/;

/**
 * Minutes since midnight of a clock reading: `22:15`, `22.15`, `22h15`, `2215`, `22`, `10:15 pm`, `noon`;
 * `24:00` is the day's end. Null: no such reading.
 * `readClock("22:15") === 1335`
 */
export function readClock(text: string): number | null {
  const trimmed = text.trim();
  if (/^noon$/i.test(trimmed)) return 720;
  if (/^midnight$/i.test(trimmed)) return 1_440;
  const [, hours, minutes = "0", half] = CLOCK.exec(trimmed) ?? FOUR_DIGITS.exec(trimmed) ?? [];
  if (hours === undefined || Number(minutes) > 59) return null;
  if (half === undefined) {
    const reading = Number(hours) * 60 + Number(minutes);
    return reading <= 1_440 ? reading : null;
  }
  if (Number(hours) < 1 || Number(hours) > 12) return null;
  const afternoon = half.toLowerCase() === "pm" ? 12 : 0;
  return ((Number(hours) % 12) + afternoon) * 60 + Number(minutes);
}

/** A clock reading for the screens; 24 h and more run on into the next day. `clockReading(1560) === "2:00"` */
export function clockReading(minute: number): string {
  const shown = minute === 1_440 ? minute : minute % 1_440;
  return `${Math.floor(shown / 60)}:${String(shown % 60).padStart(2, "0")}`;
}
