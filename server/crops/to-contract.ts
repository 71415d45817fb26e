import type { Crop } from "#shared/contracts/crops.ts";
import { cautionsFor } from "#shared/engines/preservation/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import type { Reference } from "../facts/reference.ts";

/** Sets, cloves and tubers go where they will stand; slips are planted out. */
const METHOD: Readonly<Record<string, Crop["usualMethod"]>> = { direct: "direct", sets: "direct", cloves: "direct", tuber: "direct", transplant: "transplant", slips: "transplant", established: "established" };

export function toContract(crop: CropFacts, book: Reference): Crop {
  const { slug, name, family, habit, perennial, baseC, upperC, daysToMaturity, keepDays } = crop;
  return {
    crop: slug,
    name,
    family,
    habit,
    perennial,
    usualMethod: METHOD[crop.usualMethod] ?? (perennial ? "established" : "direct"),
    baseC,
    upperC,
    daysToMaturity: daysToMaturity && { low: daysToMaturity.low, high: daysToMaturity.high, from: daysToMaturity.from },
    amounts: [...(crop.gramsPerRowM ? ["rowM" as const] : []), ...(crop.gramsPerPlant ? ["plants" as const] : []), ...(crop.gramsPerM2 ? ["areaM2" as const] : [])],
    keepDays,
    cautions: [...cautionsFor({ crops: [slug] }, book.preservation)],
    sources: crop.sources.map((id) => ({ id, text: book.sources.get(id) ?? id })),
  };
}
