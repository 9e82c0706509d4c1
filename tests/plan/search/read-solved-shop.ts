import type { ShopFile, ShopPiece, ShopStep } from "../../bench/plan/shop-file.ts";
import type { SolvedShop } from "./solved-shops.ts";

/** A made-up shop in the shop/1 form. */
export function readSolvedShop(shop: SolvedShop): ShopFile {
  return {
    format: "shop/1",
    name: shop.name,
    operators: 1,
    horizon: shop.horizon,
    sessions: shop.hours.split(/\s+/).map((session) => {
      const [open = 0, close = 0] = session.split("..").map(Number);
      return [open, close];
    }),
    holders: shop.rack === null ? {} : { rack: shop.rack },
    setups: shop.withSetUps
      ? {
          booth: { type: "family", minutes: 8 },
          pot: { type: "heat", minutes: 20, keep: 15 },
          epoxy: { type: "mix", minutes: 4, potLife: 30 },
        }
      : {},
    exclusions: [
      { after: "solvent", forbids: "heat" },
      { after: "wet", forbids: "dust" },
    ],
    wipCap: shop.wipCap,
    objective: { tardy: 10, flow: 1 },
    pieces: shop.pieces
      .trim()
      .split(/\n {6}(?=\d)/)
      .map(readPiece),
  };
}

function readPiece(line: string): ShopPiece {
  const [head = "", rest = ""] = line.split(":");
  const [release = 0, due = 0, weight = 0, finalCure = 0] = head.split(" ").map(Number);
  const steps = rest.split(",").map((step) => step.trim().split(/\s+/));
  return {
    release,
    due,
    weight,
    finalCure,
    steps: steps.map(readStep),
    edges: steps.slice(1).map((words, index) => {
      const wait = words.find((word) => word.startsWith(">"))?.slice(1) ?? "0";
      const [least = "0", most = null] = wait.split("..");
      return [index, index + 1, Number(least), most === null ? null : Number(most)];
    }),
  };
}

function readStep(words: readonly string[]): ShopStep {
  const after = (sign: string) => words.filter((word) => word.startsWith(sign)).map((word) => word.slice(1));
  const [station = null, family = null] = after("@")[0]?.split("/") ?? [];
  const [hold] = after("#");
  return {
    p: Number(words.find((word) => /^\d/.test(word))),
    station,
    family,
    tags: after("!"),
    marks: Object.fromEntries(
      words
        .filter((word) => /^[a-z]+\+/.test(word))
        .map((word) => {
          const [mark = "", minutes = ""] = word.split("+");
          return [mark, Number(minutes)];
        }),
    ),
    hold: hold === undefined ? null : { holder: "rack", minutes: Number(hold) },
  };
}
