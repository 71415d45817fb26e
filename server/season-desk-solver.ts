/** HiGHS as the season planner's solver: one native model for each programme held open, given back when it is closed. */
import loadHighs, { type Highs } from "highs";
import type { Effort, OpenProgramme, Programme, Solved, Solver } from "#shared/engines/season-plan/programme.ts";

type Model = ReturnType<Highs["createModel"]>;
const [OPTIMAL, INFEASIBLE, UNBOUNDED_OR_INFEASIBLE] = [7, 8, 9];
/** Equal programmes give equal ties. */
const SEED = 0;

export async function highsSolver(): Promise<Solver> {
  const highs = await loadHighs();
  return { open: (programme) => opened(highs, programme) };
}

function opened(highs: Highs, programme: Programme): OpenProgramme {
  const { lower, upper, whole, rowLower, rowUpper, starts, indices, values } = programme;
  const [numCols, numRows] = [lower.length, rowLower.length];
  const model = highs.createModel({
    numCols,
    numRows,
    colCost: new Float64Array(numCols),
    colLower: lower,
    colUpper: upper,
    rowLower,
    rowUpper,
    matrix: { format: "csr", numRows, numCols, starts, indices, values },
    integrality: whole,
  });
  model.options.set({ output_flag: false, mip_rel_gap: 0, random_seed: SEED });
  let locks = 0;
  return {
    minimise: (costs, effort, start) => minimised(model, costs, effort, start ?? null),
    setBounds: (from, to) => void model.changeColsBounds({ kind: "range", from: 0, to: numCols - 1 }, from, to),
    setWhole: (kinds) => void model.changeColsIntegrality({ kind: "range", from: 0, to: numCols - 1 }, kinds),
    lock(costs, most) {
      const at = [...costs.keys()].filter((column) => costs[column] !== 0);
      model.addRow(-Infinity, most, { indices: at, values: at.map((column) => costs[column] as number) });
      locks += 1;
    },
    unlockTo(left) {
      if (left < locks) model.deleteRows({ kind: "range", from: numRows + left, to: numRows + locks - 1 });
      locks = Math.min(locks, left);
    },
    close: () => model.dispose(),
  };
}

function minimised(model: Model, costs: Float64Array, { seconds, gap }: Effort, start: Float64Array | null): Solved {
  model.changeColsCost({ kind: "range", from: 0, to: costs.length - 1 }, costs);
  const before = model.getRunTime();
  model.options.set({ time_limit: Math.max(0.05, seconds), mip_abs_gap: Math.min(1e6, Math.max(1e-7, gap)) });
  if (start) model.setSolution({ colValue: start });
  model.run();
  const status = model.getModelStatus();
  const spent = model.getRunTime() - before;
  if (status === INFEASIBLE || status === UNBOUNDED_OR_INFEASIBLE) return { status: "none", values: null, value: Infinity, bound: Infinity, seconds: spent };
  const found = model.info.get("primal_solution_status") === 2;
  const bound = status === OPTIMAL ? optimalBound(model) : Number(model.info.get("mip_dual_bound"));
  return {
    status: status === OPTIMAL ? "optimal" : "stopped",
    values: found ? model.getSolution().colValue : null,
    value: found ? model.getObjectiveValue() : Infinity,
    bound: Number.isFinite(bound) && Math.abs(bound) < 1e30 ? bound : -Infinity,
    seconds: spent,
  };
}

/** A programme without free whole numbers is solved as a linear one and has no bound of its own. */
function optimalBound(model: Model): number {
  const value = model.getObjectiveValue();
  const bound = Number(model.info.get("mip_dual_bound"));
  return Number.isFinite(bound) && bound <= value && Math.abs(bound) < 1e30 ? bound : value;
}
