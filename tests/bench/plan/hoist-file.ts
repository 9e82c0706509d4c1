import { FileTrouble } from "./family.ts";

/** A plating line with one hoist, as it is written. Position 0 loads and unloads, tanks follow in process order. */
export interface HoistFile {
  readonly kind: "cyclic-single-hoist";
  /** Minutes in each tank; max null: no upper limit. */
  readonly stages: readonly {
    readonly position: number;
    readonly min: number;
    readonly max: number | null;
  }[];
  /** `loadedMove[i]`: length of the move from position i to the next. */
  readonly loadedMove: readonly number[];
  readonly emptyMove: readonly (readonly number[])[];
  readonly tankCapacity?: number;
  readonly hoists?: number;
  /** Least time at the load station between a piece coming off and the next being loaded. */
  readonly loadStationMin?: number;
}

/** @throws FileTrouble when the file is no such line */
export function readHoistFile(text: string): HoistFile {
  let file: HoistFile;
  try {
    file = JSON.parse(text) as HoistFile;
  } catch (error) {
    throw new FileTrouble(`it is no JSON: ${(error as Error).message}`);
  }
  const { stages, loadedMove, emptyMove } = file;
  const moves = Array.isArray(stages) ? stages.length + 1 : 0;
  if (moves < 2 || stages.some(({ position }, index) => position !== index + 1)) {
    throw new FileTrouble("a hoist file has stages at positions 1, 2, 3 ... in process order");
  }
  const whole = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 0;
  const table = [loadedMove, ...(emptyMove ?? [])];
  if (emptyMove?.length !== moves || !table.every((row) => row?.length === moves && row.every(whole))) {
    throw new FileTrouble(`loadedMove and each row of emptyMove have ${moves} whole numbers`);
  }
  if (!stages.every(({ min, max }) => whole(min) && (max === null || whole(max)))) {
    throw new FileTrouble("min and max of every stage are whole numbers, or max is null");
  }
  if ((file.hoists ?? 1) !== 1) throw new FileTrouble("only lines with one hoist can be solved");
  return file;
}
