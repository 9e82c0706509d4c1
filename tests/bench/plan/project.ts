import { basename, dirname } from "node:path";
import type { Project } from "../../../src/plan/exact/project.ts";
import { solveProject } from "../../../src/plan/exact/solve-project.ts";
import type { Answer, Ask, Family } from "./family.ts";
import { readProgenMax, readPsplib, readShop } from "./read-project.ts";

/** Published projects and shops whose shortest makespan is known, all solved by the exact search. */
export const projects: readonly Family[] = [
  {
    format: "rcpsp",
    reads: (file) => file.endsWith(".sm"),
    solve: (text, ask) => solve(readPsplib(text), ask),
  },
  {
    format: "rcpsp-max",
    reads: (file) => file.endsWith(".sch"),
    solve: (text, ask) => solve(readProgenMax(text), ask),
  },
  {
    format: "nowait",
    reads: (file) => isShop(file) && basename(dirname(file)) === "nowait",
    solve: (text, ask) => solve(readShop(text, false), ask),
  },
  {
    format: "jobshop",
    reads: isShop,
    solve: (text, ask) => solve(readShop(text, true), ask),
  },
];

function isShop(file: string): boolean {
  return file.endsWith(".txt");
}

function solve(project: Project, { ms, rounds }: Ask): Answer {
  const until = performance.now() + ms;
  const isOver = (nodes: number) => (rounds === null ? performance.now() >= until : nodes >= rounds);
  const { status, makespan, starts, bound, nodes } = solveProject(project, isOver);
  return { status, objective: makespan, bound, rounds: nodes, starts };
}
