import { describe, expect, test } from "vitest";
import { coatsBefore, stepsAfter, stepsInOrder } from "../../src/process/order.ts";

function step(name: string, after: string[], coat: string | null = null) {
  return { name, after, coat };
}

// shape -> seal -> clear -> hangers -> test, and bend -> hangers beside it
const lure = [
  step("shape", []),
  step("seal", ["shape"], "sealer"),
  step("sand", ["seal"]),
  step("clear", ["sand"], "varnish"),
  step("hangers", ["clear", "bend"]),
  step("bend", []),
  step("test", ["hangers"]),
];

describe("the order of steps", () => {
  test("puts each after all it waits for, else keeps the file's order", () => {
    expect(stepsInOrder(lure).map(({ name }) => name)).toEqual([
      "shape",
      "seal",
      "sand",
      "clear",
      "bend",
      "hangers",
      "test",
    ]);
  });

  test("leaves out a ring and what follows it", () => {
    const ring = [step("a", []), step("b", ["c"]), step("c", ["b"]), step("d", ["c"])];
    expect(stepsInOrder(ring).map(({ name }) => name)).toEqual(["a"]);
  });

  test("knows all that comes after a step", () => {
    expect(stepsAfter(lure, "sand")).toEqual(["clear", "hangers", "test"]);
    expect(stepsAfter(lure, "bend")).toEqual(["hangers", "test"]);
    expect(stepsAfter(lure, "test")).toEqual([]);
  });

  test("knows the nearest coat on each path back", () => {
    const names = (name: string) => coatsBefore(lure, name).map((found) => found.name);
    expect(names("clear")).toEqual(["seal"]);
    expect(names("test")).toEqual(["clear"]);
    expect(names("seal")).toEqual([]);
    const two = [step("a", [], "x"), step("b", [], "y"), step("c", ["a", "b"])];
    expect(coatsBefore(two, "c").map((found) => found.name)).toEqual(["a", "b"]);
  });
});
