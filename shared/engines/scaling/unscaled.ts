/**
 * What stays as it is, or does not grow with the amount, in plain sentences.
 * Sources: cooling in layers of 2 inches (Clemson extension column on leftovers) and in small portions (North Dakota State University Extension);
 * evaporation by area and power: derived; times, tins and leavening: common practice, no source.
 */
import { boilMin } from "./boil.ts";
import { coolingWords } from "./cooling.ts";
import type { RecipeToScale, Unscaled } from "./types.ts";

export interface UnscaledNote {
  readonly what: Unscaled;
  readonly text: string;
}

const SIMMER = /\b(?:simmer|boil|reduce|bubble|stew)/i;
const SENTENCES: Readonly<Record<Exclude<Unscaled, "times" | "tins" | "evaporation" | "cooling">, string>> = {
  leavening: "Baking powder, soda and yeast go with the flour only while tin and depth stay the same; in a large batch start a little low.",
  salt: "Salt does not simply multiply: start low and taste.",
  spice: "Spice, chilli and dried herbs grow stronger in a large batch: start low and taste.",
  thickener: "Thickener depends on how much boils away: add it bit by bit.",
  eggs: "Eggs come whole: the line says how to make up the rest.",
  pans: "Fat for the pan goes by the pan.",
};

export function doesNotScale(recipe: RecipeToScale, factor: number, kinds: ReadonlySet<Unscaled>, dish: boolean): UnscaledNote[] {
  if (factor === 1 && !dish) return [];
  const note = (what: Unscaled, text: string): UnscaledNote => ({ what, text });
  const oven = recipe.steps.some(({ needs }) => needs.oven !== undefined);
  const hob = recipe.steps.some(({ needs, text }) => (needs.burners ?? 0) > 0 || SIMMER.test(text));
  const waits = recipe.steps.some(({ handsOffMin }) => (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.high) > 0);
  return [
    ...(waits ? [note("times", timeWords(oven, hob, factor, litresOf(recipe)))] : []),
    ...(oven ? [note("tins", dish ? "The tin is another: keep the food as deep as it was, to within 1 cm." : "Tins and dishes are not multiplied: use more of the same size, as deep as before.")] : []),
    ...(hob && factor > 1 && SIMMER.test(allText(recipe)) ? [note("evaporation", "What boils away goes by the width of the pot and the burner, not by the amount: hold back some of the liquid, and reducing takes longer.")] : []),
    ...(Object.keys(SENTENCES) as (keyof typeof SENTENCES)[]).flatMap((what) => (kinds.has(what) ? [note(what, SENTENCES[what])] : [])),
    ...((oven || hob) && factor > 1 ? [note("cooling", coolingWords(litresOf(recipe) * factor))] : []),
  ];
}

/** What has a weight, as litres of one batch; 0 where nothing has. */
const litresOf = ({ lines, holdsPot }: RecipeToScale): number => (holdsPot ? lines.reduce((sum, { grams }) => sum + (grams ?? 0), 0) / 1000 : 0);
/** Below this the difference is not worth a word. */
const WORTH_SAYING_L = 2;

function timeWords(oven: boolean, hob: boolean, factor: number, litres: number): string {
  if (oven) return "Baking times hold for the same tin and depth. For a shallower or deeper one start looking at three quarters of the time; a full oven takes about 15 % longer.";
  if (hob && factor > 1) return `Cooking times stay as they are once it boils; a fuller pot takes longer to get there.${litres * factor < WORTH_SAYING_L ? "" : ` From cold about ${about(boilMin(litres * factor))} min instead of ${about(boilMin(litres))} on an electric ring of 2 kW, gas nearly twice as long.`}`;
  return "Times stay as they are.";
}

const about = (min: number): number => Math.round(min);
const allText = (recipe: RecipeToScale): string => recipe.steps.map(({ text }) => text).join(" ");
