import type { RotationFile } from "../../bench/plan/rotation-file.ts";

/**
 * Five invented routings, drawn from a seed, whose least span at a period of one day was proven by a general constraint
 * solver (`null`: it came to no answer). A step is `name minutes station:family tags marks hold`, a dot for none; the
 * wait from a step to the next is its least and most minutes.
 */
interface MadeRotation {
  readonly name: string;
  readonly least: number | null;
  readonly bench: readonly [number, number];
  readonly finalCure: number;
  readonly steps: readonly string[];
  readonly waits: readonly string[];
}

export const madeRotations: readonly MadeRotation[] = [
  {
    name: "twelve steps in daily hours",
    least: 3080,
    bench: [540, 1020],
    finalCure: 1355,
    steps: [
      "shape 34 . dust . .",
      "seal-a 8 . . solvent=40,wet=15 170",
      "drill 5 . dust . .",
      "pour 5 pot heat . .",
      "prime 9 booth:white . wet=15,solvent=20 30",
      "colour-a 12 booth:warm . wet=20,solvent=20 30",
      "colour-b 12 booth:white . wet=20,solvent=20 25",
      "clear-a 8 . . solvent=40,wet=40 120",
      "detail 13 . . . .",
      "colour-c 8 booth:white . wet=20 30",
      "scuff 5 . dust . .",
      "clear-c 8 epoxy . wet=160 845",
    ],
    waits: [
      "0..",
      "225..1745",
      "0..",
      "35..",
      "65..1680",
      "30..",
      "25..",
      "165..1755",
      "80..",
      "65..1685",
      "0..",
    ],
  },
  {
    name: "twelve steps in evening hours",
    least: 6728,
    bench: [1080, 1260],
    finalCure: 925,
    steps: [
      "shape 34 . dust . .",
      "seal-a 8 . . solvent=40,wet=15 170",
      "drill 5 . dust . .",
      "pour 5 pot heat . .",
      "prime 9 booth:white . wet=15,solvent=20 30",
      "colour-a 12 booth:white . wet=15 25",
      "colour-b 15 booth:white . wet=10 40",
      "clear-a 7 . . solvent=25,wet=30 365",
      "detail 15 . . . .",
      "colour-c 7 booth:warm . wet=10 65",
      "scuff 8 . dust . .",
      "clear-c 9 epoxy . wet=185 865",
    ],
    waits: [
      "0..",
      "225..1745",
      "0..",
      "35..",
      "65..1705",
      "50..",
      "70..",
      "415..1890",
      "70..",
      "65..1595",
      "0..",
    ],
  },
  {
    name: "sixteen steps in daily hours",
    least: 3896,
    bench: [540, 1020],
    finalCure: 0,
    steps: [
      "shape 20 . dust . .",
      "sand-a 14 . dust . .",
      "seal-a 7 . . solvent=30,wet=35 165",
      "sand-b 12 . dust . .",
      "drill 8 . dust . .",
      "pour 4 pot heat . .",
      "sand-c 11 . dust . .",
      "prime 5 booth:white . wet=15 50",
      "colour-a 5 booth:dark . wet=15 35",
      "colour-b 5 booth:metal . wet=15,solvent=20 30",
      "clear-a 5 . . solvent=30,wet=30 230",
      "detail 20 . . . .",
      "colour-c 4 booth:metal . wet=20,solvent=20 40",
      "scuff 4 . dust . .",
      "clear-c 5 epoxy . wet=210 535",
      "fit-b 10 . . . .",
    ],
    waits: [
      "0..",
      "0..",
      "190..1870",
      "0..",
      "0..",
      "25..",
      "0..",
      "110..1690",
      "45..1715",
      "40..",
      "255..1745",
      "105..",
      "85..1750",
      "0..",
      "735..",
    ],
  },
  {
    name: "sixteen steps in evening hours",
    least: null,
    bench: [1080, 1260],
    finalCure: 0,
    steps: [
      "shape 20 . dust . .",
      "sand-a 14 . dust . .",
      "seal-a 7 . . solvent=30,wet=35 165",
      "sand-b 12 . dust . .",
      "drill 8 . dust . .",
      "pour 4 pot heat . .",
      "sand-c 11 . dust . .",
      "prime 5 booth:white . wet=15 50",
      "colour-a 10 booth:warm . wet=15 15",
      "colour-b 15 booth:dark . wet=20 15",
      "clear-a 5 . . solvent=30,wet=30 230",
      "detail 20 . . . .",
      "colour-c 4 booth:metal . wet=20,solvent=20 40",
      "scuff 8 . dust . .",
      "clear-c 6 epoxy . wet=140 620",
      "fit-b 10 . . . .",
    ],
    waits: [
      "0..",
      "0..",
      "190..1870",
      "0..",
      "0..",
      "25..",
      "0..",
      "110..1750",
      "20..70",
      "25..1685",
      "255..1745",
      "105..",
      "85..1645",
      "0..",
      "730..2405",
    ],
  },
  {
    name: "twenty steps in daily hours",
    least: 7009,
    bench: [540, 1020],
    finalCure: 0,
    steps: [
      "shape 22 . dust . .",
      "sand-a 8 . dust . .",
      "seal-a 5 . . solvent=25,wet=20 205",
      "sand-b 5 . dust . .",
      "seal-b 8 . . solvent=60,wet=20 215",
      "drill 10 . dust . .",
      "pour 5 pot heat . .",
      "fit-a 6 epoxy . . .",
      "sand-c 9 . dust . .",
      "prime 9 booth:white . wet=20,solvent=20 45",
      "base 8 booth:white . wet=15 35",
      "colour-a 6 booth:dark . wet=20,solvent=20 20",
      "colour-b 13 booth:metal . wet=15 40",
      "clear-a 7 . . solvent=45,wet=20 445",
      "detail 9 . . . .",
      "colour-c 5 booth:dark . wet=10 20",
      "clear-b 9 epoxy . wet=155 665",
      "scuff 5 . dust . .",
      "clear-c 5 epoxy . wet=230 760",
      "fit-b 9 . . . .",
    ],
    waits: [
      "0..",
      "0..",
      "210..",
      "0..",
      "455..2015",
      "0..",
      "25..",
      "595..",
      "0..",
      "95..130",
      "75..",
      "45..1600",
      "60..",
      "475..",
      "105..",
      "35..1535",
      "960..2610",
      "0..",
      "1205..2830",
    ],
  },
];

/** The routing as a rotation file says it. */
export function rotationFileOf({ bench, finalCure, steps, waits }: MadeRotation): RotationFile {
  return {
    format: "rotation/1",
    bench,
    day: 1440,
    hooks: null,
    setups: { booth: { type: "family", minutes: 8 } },
    exclusions: [
      { after: "solvent", forbids: "heat" },
      { after: "wet", forbids: "dust" },
    ],
    steps: steps.map(stepOf),
    edges: waits.map((wait, index) => {
      const [least = "0", most = ""] = wait.split("..");
      return [index, index + 1, Number(least), most === "" ? null : Number(most)] as const;
    }),
    finalCure,
  };
}

function stepOf(line: string): RotationFile["steps"][number] {
  const [name = "", p, place = ".", tags = ".", marks = ".", hold = "."] = line.split(" ");
  const [station, family] = place.split(":");
  return {
    name,
    p: Number(p),
    station: place === "." ? null : (station ?? null),
    family: family ?? null,
    tags: tags === "." ? [] : tags.split(","),
    marks:
      marks === "."
        ? {}
        : Object.fromEntries(
            marks.split(",").map((mark) => {
              const [what = "", minutes] = mark.split("=");
              return [what, Number(minutes)];
            }),
          ),
    hold: hold === "." ? null : { holder: "rack", minutes: Number(hold) },
  };
}
