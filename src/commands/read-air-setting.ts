import { airChangesOf } from "../cure/room-clearing.ts";
import type { Setting } from "../journal/event.ts";
import type { CommandWords } from "./command-words.ts";

/** Cubic feet in a cubic metre: 1 / 0.3048³, by the definition of the foot. */
const CUBIC_FEET = 35.314_667;

const ROOM =
  /^(.+?)(?:\s+(\d+(?:\.\d+)?)\s*(m3|m³|ft3|ft³))?((?:\s+(?:fan|changes|mixing)\s+\d+(?:\.\d+)?)*)$/i;

/** A setting of rooms, dew or touch tests in words; null: it was not understood, and the problem told. */
export function readAirSetting(
  of: "room" | "in" | "margin" | "touches",
  said: string,
  words: CommandWords,
): Setting | null {
  if (of === "room") return readRoom(said, words);
  if (of === "in") return readInRoom(said, words);
  if (of === "margin") return readMargin(said, words);
  if (/^(on|off)$/i.test(said)) return { of: "touches", count: /^on$/i.test(said) };
  words.problems.push(`"${said}" is neither on nor off`);
  return null;
}

/** Words of a room's figures that were not read as such, and would end as its name. */
const FIGURES = /\d\s*(?:m3|m³|ft3|ft³)(?:\s|$)|\s-\d|\s(?:fan|changes|mixing)(?:\s+\S*\d\S*)?$/i;

/** `garage`, `garage 37 m3 fan 300`, `garage changes 6 mixing 3`: a fan moves as many of the room's own unit an hour. */
function readRoom(said: string, words: CommandWords): Setting | null {
  const [, name = "", volume, unit = "", rest = ""] = ROOM.exec(said) ?? [];
  if (name === "" || FIGURES.test(name)) {
    words.problems.push(
      `"${said}" is no room with its figures: write garage 37 m3 fan 300, or garage changes 6 mixing 3`,
    );
    return null;
  }
  const value = (word: string): number | null => {
    const found = new RegExp(`${word}\\s+(\\d+(?:\\.\\d+)?)`, "i").exec(rest)?.[1];
    return found === undefined ? null : Number(found);
  };
  const [fan, changes, mixing] = [value("fan"), value("changes"), value("mixing")];
  if (fan !== null && volume === undefined) {
    words.problems.push("a fan needs the room's volume too: settings room garage 37 m3 fan 300");
    return null;
  }
  const perCubicMetre = /ft/i.test(unit) ? CUBIC_FEET : 1;
  const byFan = fan === null ? null : airChangesOf(fan / perCubicMetre, Number(volume) / perCubicMetre);
  return { of: "room", name, airChangesPerHour: changes ?? byFan, mixingFactor: mixing };
}

/** `"spray corner" "paint room"`: quotes are gone by now, so the room is what the last words name. */
function readInRoom(said: string, words: CommandWords): Setting | null {
  const [, what, room] = /^(.+?)\s*(?:=|,|\bis in\b|\bin\b)\s*(.+)$/.exec(said) ?? [];
  if (what === undefined || room === undefined) {
    words.problems.push('say what is in which room: settings in "spray corner in paint room"');
    return null;
  }
  return { of: "in room", what, room: /^(none|the shop)$/i.test(room) ? null : room };
}

function readMargin(said: string, words: CommandWords): Setting | null {
  const [, figure, unit] = /^(\d+(?:\.\d+)?)\s*°?\s*([CF])$/i.exec(said) ?? [];
  if (figure === undefined) {
    words.problems.push(`"${said}" is no span of degrees: write 3C or 5F`);
    return null;
  }
  return { of: "dew margin", celsius: unit?.toUpperCase() === "F" ? Number(figure) / 1.8 : Number(figure) };
}
