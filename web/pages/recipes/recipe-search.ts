/** Which recipes are shown: by crop, by way, by what is typed. Pure. */
import type { RecipeBrief } from "#shared/contracts/recipes.ts";

export interface Asked {
  readonly crop: string | null;
  readonly way: string | null;
  /** Only with what is in the larder or ripens this week. */
  readonly hand: boolean;
  /** Words, all of which have to be found. */
  readonly words: string;
}

/** Whether anything narrows the list. */
export const isNarrowed = ({ crop, way, words, hand }: Asked): boolean => hand || crop !== null || way !== null || words.trim() !== "";

/** `names` of crops, so that “tomato” finds a sauce that does not name them. `atHand`: crops that are there; null while that is not known yet. */
export function found(all: readonly RecipeBrief[], asked: Asked, names: ReadonlyMap<string, string>, atHand: ReadonlySet<string> | null = null): RecipeBrief[] {
  const words = folded(asked.words).split(/\s+/).filter(Boolean);
  return all.filter((recipe) => {
    if (asked.hand && atHand !== null && (recipe.uses.length === 0 || !recipe.uses.every((use) => atHand.has(use.crop)))) return false;
    if (asked.crop !== null && !recipe.uses.some((use) => use.crop === asked.crop)) return false;
    if (asked.way !== null && recipe.way !== asked.way) return false;
    if (words.length === 0) return true;
    const text = folded([recipe.title, recipe.way, ...recipe.uses.map(({ crop }) => names.get(crop) ?? crop), recipe.lines].join(" "));
    return words.every((word) => text.includes(word));
  });
}

/** Lower case without accents, so that “puree” finds purée. */
const folded = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
