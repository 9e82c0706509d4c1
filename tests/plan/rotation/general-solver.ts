import loadHighs from "highs";

/** Its types tell of a CommonJS module, and Node loads the other one it ships. */
const load = loadHighs as unknown as (typeof loadHighs)["default"];

/** HiGHS, a general solver of linear and mixed-integer programs: a second method to prove by. */
export async function generalSolver(): Promise<(program: string) => number | null> {
  const highs = await load();
  return (program) => {
    const solved = highs.solve(program, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
    if (solved.Status === "Infeasible") return null;
    if (solved.Status !== "Optimal") throw new Error(`the general solver says ${solved.Status}`);
    return Math.round(solved.ObjectiveValue);
  };
}
