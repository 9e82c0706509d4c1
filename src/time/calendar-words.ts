const WEEKDAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];
const MONTHS = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];

/** 1 to 7 for Monday to Sunday, from three letters on: `weekdayNamed("Thurs") === 4`. Null: no weekday. */
export function weekdayNamed(word: string): number | null {
  return placeIn(WEEKDAYS, word);
}

/** `weekdayName(4) === "Thursday"` */
export function weekdayName(weekday: number): string {
  const name = WEEKDAYS[weekday - 1] ?? "";
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

/** 1 to 12, from three letters on: `monthNamed("Sept") === 9`. Null: no month. */
export function monthNamed(word: string): number | null {
  return placeIn(MONTHS, word);
}

function placeIn(names: readonly string[], word: string): number | null {
  const bare = word.toLowerCase().replace(/\.$/, "");
  if (bare.length < 3) return null;
  const index = names.findIndex((name) => name.startsWith(bare));
  return index < 0 ? null : index + 1;
}
