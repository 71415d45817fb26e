/** Dishes and crops that stand in more than one lot, for taking the oldest first. Pure. */
import type { LarderLot } from "#shared/contracts/lots.ts";

export interface Kin {
  readonly key: string;
  /** Of the oldest lot; lots of one dish carry the week in their names. */
  readonly title: string;
  readonly of: { readonly crop: string } | { readonly recipeId: string };
  readonly countedIn: "grams" | "portions";
}

export function kinOf(lots: readonly LarderLot[], recipes: readonly { readonly id: string; readonly title: string }[], crops: readonly { readonly crop: string; readonly name: string }[]): Kin[] {
  const groups = new Map<string, LarderLot[]>();
  for (const lot of lots) {
    const key = lot.recipeId ?? lot.crop;
    if (key !== undefined && (lot.portions ?? lot.grams ?? 0) > 0 && !lot.discard) groups.set(key, [...(groups.get(key) ?? []), lot]);
  }
  return [...groups]
    .flatMap(([key, [first, ...more]]): Kin[] => {
      if (!first || more.length + first.stands.length < 2) return [];
      const title = recipes.find(({ id }) => id === first.recipeId)?.title ?? crops.find(({ crop }) => crop === first.crop)?.name ?? first.title;
      return [{ key, title, of: first.recipeId === undefined ? { crop: key } : { recipeId: key }, countedIn: first.countedIn ?? "portions" }];
    })
    .sort((a, b) => (a.title < b.title ? -1 : 1));
}
