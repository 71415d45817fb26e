import type { MeasureSystem, UnitDefinition } from "../../kernel/units.ts";
import type { MeasureTables } from "./types.ts";

/** The unit as this system has it; undefined for counted things. */
export function unitOf(unit: string, system: MeasureSystem, tables: MeasureTables): UnitDefinition | undefined {
  const systems = tables.units.get(unit);
  return systems?.get(system) ?? systems?.get("any");
}
