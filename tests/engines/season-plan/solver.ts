/** The solver for tests: compiled the quick way, as most runs here are over before its fast code would be ready. */
import { setFlagsFromString } from "node:v8";
import { highsSolver } from "#server/season-desk-solver.ts";

setFlagsFromString("--wasm-tiering-budget=2000000000");

export const solver = await highsSolver();
