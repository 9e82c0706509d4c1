/** Says whether a value has the form it should have. Light: forms only, no limits; thousands are checked at a start. */
export type Shape = (value: unknown) => boolean;

export const text: Shape = (value) => typeof value === "string";
export const number: Shape = (value) => typeof value === "number";
export const flag: Shape = (value) => typeof value === "boolean";

/** `orNull(text)(null) === true` */
export function orNull(shape: Shape): Shape {
  return (value) => value === null || shape(value);
}

/** `optional(text)(undefined) === true`: a field that need not be there. */
export function optional(shape: Shape): Shape {
  return (value) => value === undefined || shape(value);
}

/** `oneOf("tacky", "dry")("dry") === true` */
export function oneOf(...words: readonly string[]): Shape {
  return (value) => words.includes(value as string);
}

/** `either(text, number)(7) === true` */
export function either(...shapes: readonly Shape[]): Shape {
  return (value) => shapes.some((shape) => shape(value));
}

/** `listOf(number)([1, 2]) === true` */
export function listOf(shape: Shape): Shape {
  return (value) => Array.isArray(value) && value.every(shape);
}

/** An object with at least these fields. `fields({ step: text })({ step: "seal", more: 1 }) === true` */
export function fields(wanted: Readonly<Record<string, Shape>>): Shape {
  const names = Object.keys(wanted);
  const shapes = Object.values(wanted);
  return (value) => {
    if (!isRecord(value)) return false;
    // Counted, not by a call for each: at a cold start thousands are asked.
    for (let index = 0; index < names.length; index++) {
      if (shapes[index]?.(value[names[index] ?? ""]) !== true) return false;
    }
    return true;
  };
}

/** Any object whose fields all have one form. `valuesOf(number)({ wet: 0, hard: 720 }) === true` */
export function valuesOf(shape: Shape): Shape {
  return (value) => isRecord(value) && Object.values(value).every(shape);
}

/** One of several forms, told apart by the word in one field. */
export function by(field: string, forms: Readonly<Record<string, Shape>>): Shape {
  return (value) => {
    if (!isRecord(value)) return false;
    const word = value[field];
    return typeof word === "string" && Object.hasOwn(forms, word) && forms[word]?.(value) === true;
  };
}

/** @returns true for `{}`, false for null, a list, a text, a number */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
