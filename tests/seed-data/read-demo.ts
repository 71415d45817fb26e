/** The demo household, every part of it parsed by the contract that it must fit. */
import { z } from "zod";
import { NewBed } from "#shared/contracts/beds.ts";
import { Id } from "#shared/contracts/common.ts";
import { NewCookDay } from "#shared/contracts/cook-days.ts";
import { NewHousehold } from "#shared/contracts/household.ts";
import { NewPick } from "#shared/contracts/picks.ts";
import { NewPlanLine } from "#shared/contracts/plan-lines.ts";
import { NewRecipe } from "#shared/contracts/recipes.ts";
import { NewSighting } from "#shared/contracts/sightings.ts";
import { NewSowing } from "#shared/contracts/sowings.ts";
import { readJson } from "./read.ts";

const Top = z.strictObject({
  invented: z.string(),
  today: z.string(),
  attribution: z.string(),
  household: NewHousehold,
  beds: z.array(z.unknown()),
  sowings: z.array(z.unknown()),
  sightings: z.array(z.unknown()),
  picks: z.array(z.unknown()),
  recipes: z.array(z.strictObject({ id: Id, recipe: NewRecipe })),
  planLines: z.array(z.unknown()),
  cookDays: z.array(z.unknown()),
});

type WithId<T> = T & { readonly id: string };

export interface Demo {
  readonly invented: string;
  readonly today: string;
  readonly attribution: string;
  readonly household: NewHousehold;
  readonly beds: readonly WithId<NewBed>[];
  readonly sowings: readonly WithId<NewSowing>[];
  readonly sightings: readonly WithId<NewSighting & { readonly sowingId: string }>[];
  readonly picks: readonly WithId<NewPick>[];
  readonly recipes: readonly { readonly id: string; readonly recipe: NewRecipe }[];
  readonly planLines: readonly WithId<NewPlanLine>[];
  readonly cookDays: readonly WithId<NewCookDay>[];
}

/** Throws with the list and the place of the first entry that does not fit. */
export function readDemo(): Demo {
  const top = Top.parse(readJson<unknown>("demo/household.json"));
  return {
    ...top,
    beds: each("beds", top.beds, NewBed),
    sowings: each("sowings", top.sowings, NewSowing),
    sightings: each("sightings", top.sightings, NewSighting.extend({ sowingId: Id })),
    picks: each("picks", top.picks, NewPick),
    planLines: each("planLines", top.planLines, NewPlanLine),
    cookDays: each("cookDays", top.cookDays, NewCookDay),
  };
}

function each<T extends z.ZodType>(name: string, entries: readonly unknown[], body: T): WithId<z.output<T>>[] {
  return entries.map((entry, i) => {
    const { id, ...rest } = entry as Record<string, unknown>;
    const read = body.safeParse(rest);
    if (!read.success) throw new Error(`${name}.${i}: ${read.error.message}`);
    return { ...(read.data as z.output<T> & object), id: Id.parse(id) };
  });
}
