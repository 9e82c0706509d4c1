import { formatDuration } from "../time/duration.ts";
import type { Coat, Emission, Preparation, Window } from "./coat.ts";
import { writeHandsOn } from "./hands-on-form.ts";
import { writeMix } from "./quantity-form.ts";
import { writeSpan } from "./window-form.ts";
import { writeYaml } from "./write-yaml.ts";

/** A coat as a file that reads back to the same coat. What a file would leave out is left out. */
export function writeCoat(coat: Coat): string {
  return writeYaml({
    coat: coat.name,
    cures_by: coat.curesBy,
    sheet_air: `${coat.sheetAir.celsius} °C ${coat.sheetAir.humidityPercent} %`,
    lowest: coat.lowestCelsius === null ? undefined : `${coat.lowestCelsius} °C`,
    highest: coat.highestCelsius === undefined ? undefined : `${coat.highestCelsius} °C`,
    dampest: coat.dampestPercent === undefined ? undefined : `${coat.dampestPercent} %`,
    activation_energy: coat.activationEnergy == null ? undefined : `${coat.activationEnergy} kJ/mol`,
    feel_first: coat.feelFirst || undefined,
    stages: filled(mapValues(coat.stages, formatDuration)),
    windows: coat.windows.length === 0 ? undefined : coat.windows.map(writeWindow),
    flash_off: coat.flashOff === 0 ? undefined : formatDuration(coat.flashOff),
    gives_off: writeGivesOff(coat.givesOff),
    cautions: filledList(coat.cautions),
    mix: coat.mix == null ? undefined : writeMix(coat.mix),
    sheet: filled(coat.sheet),
    source: coat.source ?? undefined,
  });
}

function writeWindow(window: Window) {
  if (window.first === null) return writeSpan(window);
  return {
    from: window.opens === "flash-off" ? window.opens : formatDuration(window.opens),
    to: window.shuts === null ? undefined : formatDuration(window.shuts),
    first: writePreparation(window.first),
  };
}

function writePreparation(first: Preparation) {
  return {
    do: first.do,
    hands_on: writeHandsOn(first.handsOn),
    gives_off: writeGivesOff(first.givesOff),
    cautions: filledList(first.cautions),
  };
}

/** A plain list where all of it is only while working. */
export function writeGivesOff(emissions: readonly Emission[]) {
  if (emissions.length === 0) return undefined;
  if (emissions.every(({ lasts }) => lasts === 0)) return emissions.map(({ what }) => what);
  return Object.fromEntries(emissions.map(({ what, lasts }) => [what, writeLasts(lasts)]));
}

function writeLasts(lasts: Emission["lasts"]): string {
  if (lasts === "while set up") return lasts;
  return lasts === 0 ? "while working" : formatDuration(lasts);
}

/** Undefined in the place of a list that says nothing. */
export function filledList<T>(list: readonly T[]): readonly T[] | undefined {
  return list.length === 0 ? undefined : list;
}

/** Undefined in the place of an object that says nothing. */
export function filled<T extends object>(object: T): T | undefined {
  return Object.keys(object).length === 0 ? undefined : object;
}

function mapValues<V, W>(object: Readonly<Record<string, V>>, change: (value: V) => W): Record<string, W> {
  return Object.fromEntries(Object.entries(object).map(([key, value]) => [key, change(value)]));
}
