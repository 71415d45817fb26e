/** What closing a dish begins with: so many portions as the recipe makes, and the produce it takes out of the larder, oldest first. Nothing of it is stored. */
import { oldestFirst } from "../engines/larder/index.ts";
import type { RecipeUse } from "../kernel/recipe.ts";
import type { LarderFacts } from "./larder-facts.ts";
import { inStore, lotsToday } from "./larder-lots.ts";

export interface DraftTake {
  readonly lotId: string;
  readonly title: string;
  readonly crop: string;
  readonly placeName: string;
  readonly grams: number;
}

export interface BatchDraftToday {
  readonly portions: number;
  readonly took: readonly DraftTake[];
  readonly missing: readonly { readonly crop: string; readonly grams: number }[];
}

/** A recipe that says its yield by weight or volume says nothing of portions. */
const MEASURED: ReadonlySet<string> = new Set(["g", "kg", "ml", "l"]);

export function batchDraft({ makes, uses }: Pick<RecipeUse, "makes" | "uses">, batches: number, larder: LarderFacts): BatchDraftToday {
  const lots = lotsToday(larder);
  const took: DraftTake[] = [];
  const missing: { crop: string; grams: number }[] = [];
  for (const { crop, grams } of uses) {
    const ofCrop = lots.filter(({ lot, balance }) => lot.crop === crop && balance.left > 0);
    const drawn = oldestFirst(ofCrop.map(inStore), grams * batches, larder.today);
    for (const draw of drawn.draws) {
      const lot = ofCrop.find((one) => one.lot.id === draw.lotId);
      const placeName = larder.places.find(({ id }) => id === draw.placeId)?.name ?? "";
      took.push({ lotId: draw.lotId, title: lot?.lot.title ?? "", crop, placeName, grams: draw.amount });
    }
    if (drawn.missing > 0) missing.push({ crop, grams: drawn.missing });
  }
  return { portions: MEASURED.has(makes.unit.toLowerCase()) ? 1 : Math.max(1, Math.round(makes.amount * batches)), took: byLot(took), missing };
}

/** A lot that stands in two places is taken from once. */
function byLot(takes: readonly DraftTake[]): DraftTake[] {
  const once = new Map<string, DraftTake>();
  for (const take of takes) {
    const before = once.get(take.lotId);
    once.set(take.lotId, before === undefined ? take : { ...before, grams: before.grams + take.grams });
  }
  return [...once.values()];
}
