import { describe, expect, test } from "vitest";
import { readHandsOn, writeHandsOn } from "../../src/process/hands-on-form.ts";
import { readKeeps, writeKeeps } from "../../src/process/keeps-form.ts";
import { readAir, readAtMost, readCelsius, readMillimetres } from "../../src/process/quantity-form.ts";
import { readOpening, readSpan, writeSpan } from "../../src/process/window-form.ts";

describe("hands-on time", () => {
  test.each([
    ["6 min", 6, 6, 6],
    ["4..6 min", 4, 5, 6],
    // (4 + 7) / 2 = 5.5, rounded up
    ["4..7 min", 4, 6, 7],
    ["5..8..12 min", 5, 8, 12],
    ["5 min .. 8 min .. 12 min", 5, 8, 12],
    ["50 min..1 h 30", 50, 70, 90],
    ["1..2 h", 60, 90, 120],
    ["PT4M..PT6M", 4, 5, 6],
  ])("%s is %i, %i, %i", (text, low, likely, high) => {
    expect(readHandsOn(text)).toEqual({ low, likely, high });
  });

  test.each([
    "6",
    "0 min",
    "8..5 min",
    "5..4..6 min",
    "1..2..3..4 min",
    "4-6 min",
    "..6 min",
    "",
    "25 h",
    "5..50 s",
  ])("%s is none", (text) => {
    expect(readHandsOn(text)).toBeNull();
  });

  test("is written as short as it reads back to the same", () => {
    expect(writeHandsOn({ low: 4, likely: 6, high: 7 })).toBe("4..7 min");
    expect(writeHandsOn({ low: 4, likely: 5, high: 7 })).toBe("4..5..7 min");
    expect(writeHandsOn({ low: 90, likely: 90, high: 90 })).toBe("1 h 30");
  });
});

describe("how long a set-up keeps", () => {
  test.each([
    ["45 min from last use", { way: "heat", minutes: 45 }],
    ["30 min from mixing, serves 4", { way: "mix", minutes: 30, serves: 4 }],
    ["PT1H from mixing,serves 1", { way: "mix", minutes: 60, serves: 1 }],
    ["until another load", { way: "load" }],
  ])("%s", (text, keeps) => {
    const read = readKeeps(text);
    expect(read).toEqual(keeps);
    expect(read && readKeeps(writeKeeps(read))).toEqual(keeps);
  });

  test.each([
    "45 min",
    "from last use",
    "30 min from mixing",
    "30 min from mixing, serves 0",
    "0 min from last use",
  ])("is not said by %s", (text) => {
    expect(readKeeps(text)).toBeNull();
  });
});

describe("windows", () => {
  test.each([
    ["4 h .. 24 h", 240, 1_440],
    ["4..24 h", 240, 1_440],
    ["0 .. 2 h", 0, 120],
    ["from 24 h", 1_440, null],
    ["24 h ..", 1_440, null],
    ["flash-off ..", "flash-off", null],
    ["flash-off .. 2 d", "flash-off", 2_880],
    ["tack-free .. 12 h", "tack-free", 720],
    ["from dry-hard", "dry-hard", null],
  ])("%s", (text, opens, shuts) => {
    expect(readSpan(text)).toEqual({ opens, shuts });
  });

  test.each([
    "4 h",
    "24 h .. 4 h",
    "4 h .. 4 h",
    ".. 4 h",
    "wet .. 4 h",
    "4 h .. dry-hard",
    "1 h .. 2 h .. 3 h",
    "",
    "from",
  ])("%s is none", (text) => {
    expect(readSpan(text)).toBeNull();
  });

  test("are written so that they read back", () => {
    expect(writeSpan({ opens: 0, shuts: 120 })).toBe("0 min .. 2 h");
    expect(readSpan("0 min .. 2 h")).toEqual({ opens: 0, shuts: 120 });
    expect(writeSpan({ opens: "flash-off", shuts: null })).toBe("flash-off ..");
    expect(readOpening("0")).toBe(0);
  });
});

describe("quantities", () => {
  test("air is Celsius and per cent, from Fahrenheit too", () => {
    expect(readAir("21 °C 50 %")).toEqual({ celsius: 21, humidityPercent: 50 });
    // (70 - 32) x 5 / 9 = 21.11
    expect(readAir("70 °F 50 %")).toEqual({ celsius: 21.11, humidityPercent: 50 });
    expect(readAir("70F, 50%")).toEqual({ celsius: 21.11, humidityPercent: 50 });
    expect(readCelsius("50 °F")).toBe(10);
    expect(readCelsius("-5 C")).toBe(-5);
  });

  test.each(["21 50 %", "21 °C", "21 °C 101 %", "50 % 21 °C", "21 K 50 %", "400 °F 50 %"])(
    "%s is no air",
    (text) => {
      expect(readAir(text)).toBeNull();
    },
  );

  test.each([
    ["8 mm", 8],
    ["0.8 cm", 8],
    // 25.4 mm to the inch, exactly (international yard and pound agreement of 1959)
    ["1 in", 25.4],
    ["5/16 in", 7.9375],
    ['5/16"', 7.9375],
    ["1 1/8 in", 28.575],
  ])("%s is %d mm", (text, millimetres) => {
    expect(readMillimetres(text)).toBe(millimetres);
  });

  test.each(["8", "0 mm", "1/0 in", "5/16", "-3 mm", "2 m", "3 1/0 in", "8 mm x"])(
    "%s is no length",
    (text) => {
      expect(readMillimetres(text)).toBeNull();
    },
  );

  test("a limit has a figure and a unit", () => {
    expect(readAtMost("at most 10 %")).toEqual({ atMost: 10, unit: "%" });
    expect(readAtMost("at most 2.5 g")).toEqual({ atMost: 2.5, unit: "g" });
    expect(readAtMost("10 %")).toBeNull();
    expect(readAtMost("at most 10")).toBeNull();
  });
});
