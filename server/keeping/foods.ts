/** What can be asked for: every crop of the book and every food of the tested tables, with the ways, jars and canners that have rows. */
import { KEEPING_WAYS, type KeepingFoods } from "#shared/contracts/keeping.ts";
import { safeWays } from "#shared/engines/preservation/index.ts";
import type { Reference } from "../facts/reference.ts";

type Food = KeepingFoods[number];

export function keepingFoods({ crops, preservation }: Reference): KeepingFoods {
  const grown = [...crops.values()].map(({ slug, name }): Food => {
    const rows = preservation.canning.filter((row) => row.crops.includes(slug));
    return { food: slug, name, kind: "crop", ways: safeWays(slug, preservation).filter(({ open }) => open).map(({ way }) => way), ...jarsOf(rows) };
  });
  const tested = [...new Set(preservation.canning.map(({ food }) => food))].filter((food) => !crops.has(food)).map((food): Food => {
    const rows = preservation.canning.filter((row) => row.food === food);
    return { food, name: rows[0]?.title ?? food, kind: "tested food", ways: KEEPING_WAYS.filter((way) => rows.some((row) => row.way === way)), ...jarsOf(rows) };
  });
  return [...grown, ...tested].sort((a, b) => a.name.localeCompare(b.name, "en"));
}

const jarsOf = (rows: readonly { readonly jar: Food["jars"][number]; readonly canner: Food["canners"][number] }[]): Pick<Food, "jars" | "canners"> => ({ jars: [...new Set(rows.map(({ jar }) => jar))], canners: [...new Set(rows.map(({ canner }) => canner))] });
