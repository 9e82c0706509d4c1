import * as z from "zod/mini";

/**
 * What could be read of an object, field by field: cross-checks look at the good fields even where others are wrong,
 * so that the maker is told everything at once.
 */
export interface LooseFields<T> {
  readonly fields: Partial<T>;
  /** Said, but wrong in itself: not to be reported as missing. */
  readonly bad: ReadonlySet<string>;
}

/** Reads each field by its own schema. Fields that are not said stand in neither. */
export function readLoosely<S extends z.core.$ZodShape>(
  shape: S,
  source: unknown,
): LooseFields<z.output<z.ZodMiniObject<S>>> {
  const fields: Record<string, unknown> = {};
  const bad = new Set<string>();
  for (const [key, value] of Object.entries(isObject(source) ? source : {})) {
    const schema = Object.hasOwn(shape, key) ? shape[key] : undefined;
    if (schema === undefined) continue;
    const read = z.safeParse(schema, value);
    if (read.success) fields[key] = read.data;
    else bad.add(key);
  }
  // Each field has been read by the very schema that gives T its type.
  return { fields: fields as Partial<z.output<z.ZodMiniObject<S>>>, bad };
}

export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
