/** HiGHS as the season planner's solver: one native model for each programme held open, given back when it is closed. */
import loadHighs, { type Highs } from "highs";
import type { Effort, OpenProgramme, Programme, Solved, Solver } from "#shared/engines/season-plan/programme.ts";

type Model = ReturnType<Highs["createModel"]>;
const [OPTIMAL, INFEASIBLE, UNBOUNDED_OR_INFEASIBLE, TIME_LIMIT] = [7, 8, 9, 13];

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
  model.options.set({ output_flag: false, mip_rel_gap: 0 });
  let locks = 0;
  return {
    minimise: (costs, effort, start) => minimised(highs, model, costs, effort, start ?? null),
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

function minimised(highs: Highs, model: Model, costs: Float64Array, { steps, seconds, gap, stop, seed }: Effort, start: Float64Array | null): Solved {
  model.changeColsCost({ kind: "range", from: 0, to: costs.length - 1 }, costs);
  const before = model.getRunTime();
  model.options.set({ time_limit: Math.max(0.05, seconds), mip_abs_gap: Math.min(1e6, Math.max(1e-7, gap)), random_seed: seed ?? 0 });
  if (start) model.setSolution({ colValue: start });
  let taken = 0;
  let stopped = false;
  model.run({
    [highs.constants.callbackType.mipInterrupt](event) {
      taken = Number(event.data.mip_total_lp_iterations ?? 0);
      stopped = stop?.() ?? false;
      if (stopped || taken >= steps) event.interrupt();
      return undefined;
    },
  });
  const status = model.getModelStatus();
  const spent = { seconds: model.getRunTime() - before, steps: Math.max(taken, Number(model.info.get("simplex_iteration_count")), 1), cutShort: stopped || status === TIME_LIMIT };
  if (status === INFEASIBLE || status === UNBOUNDED_OR_INFEASIBLE) return { status: "none", values: null, value: Infinity, bound: Infinity, ...spent };
  const found = model.info.get("primal_solution_status") === 2;
  const bound = status === OPTIMAL ? optimalBound(model) : Number(model.info.get("mip_dual_bound"));
  return {
    status: status === OPTIMAL ? "optimal" : "stopped",
    values: found ? model.getSolution().colValue : null,
    value: found ? model.getObjectiveValue() : Infinity,
    bound: Number.isFinite(bound) && Math.abs(bound) < 1e30 ? bound : -Infinity,
    ...spent,
  };
}

/** A programme without free whole numbers is solved as a linear one and has no bound of its own. */
function optimalBound(model: Model): number {
  const value = model.getObjectiveValue();
  const bound = Number(model.info.get("mip_dual_bound"));
  return Number.isFinite(bound) && bound <= value && Math.abs(bound) < 1e30 ? bound : value;
}
