/** What a planting of a size yields in a season, and what logged picks say about the rest of it. Grams as picked. */
import type { CropFacts, YieldBand } from "../../kernel/crop-facts.ts";
import type { Learned } from "./learned.ts";
import type { Planting } from "./types.ts";

export interface SeasonYield {
  readonly likelyGrams: number;
  /** Spread of the logarithm. */
  readonly sigmaLn: number;
  readonly notes: readonly string[];
}

/** From the 10th to the 90th percentile of a normal distribution, in standard deviations. */
const TEN_TO_NINETY = 2.563;

export function seasonYield(planting: Planting, share: number): SeasonYield {
  const { size, band, note } = yieldPerUnit(planting);
  const notes = note === null ? [] : [note];
  if (!band) return { likelyGrams: 0, sigmaLn: 0, notes: [...notes, "The book has no yield for this crop."] };
  return { likelyGrams: size * band.likely * share, sigmaLn: Math.log(band.high / band.low) / TEN_TO_NINETY, notes };
}

/** Moved by what the household's own seasons brought, and never less sure than the book for it. */
export function withOwnYield(yields: SeasonYield, learned: Learned | null): SeasonYield {
  if (!learned) return yields;
  const percent = Math.round(100 * Math.abs(Math.expm1(learned.shiftLn)));
  const own = learned.count === 1 ? "1 finished season of your own" : `${learned.count} finished seasons of your own`;
  const words = percent === 0 ? `The amount is what ${own} bear${learned.count === 1 ? "s" : ""} out.` : `By ${own} the amount is taken ${percent} % ${learned.shiftLn < 0 ? "below" : "above"} the book's.`;
  return {
    likelyGrams: yields.likelyGrams * Math.exp(learned.shiftLn),
    sigmaLn: Math.min(yields.sigmaLn, learned.sigmaLn ?? Infinity),
    notes: [...yields.notes, words],
  };
}

interface PerUnit {
  readonly size: number;
  readonly band: YieldBand | null;
  readonly note: string | null;
}

/** The book's figure for the unit the planting is counted in; where it has none, another unit's through the crop's usual spacing. */
function yieldPerUnit({ crop, plants, rowM, areaM2 }: Planting): PerUnit {
  const plantM = (crop.spacingCm?.plant ?? NaN) / 100;
  const rowApartM = (crop.spacingCm?.row ?? NaN) / 100;
  const { gramsPerPlant: each, gramsPerRowM: row, gramsPerM2: area } = crop;
  if (plants !== null) return inUnit(crop, plants, each, [row, plantM], [area, plantM * rowApartM]);
  if (rowM !== null) return inUnit(crop, rowM, row, [each, 1 / plantM], [area, rowApartM]);
  return inUnit(crop, areaM2 ?? 0, area, [row, 1 / rowApartM], [each, 1 / (plantM * rowApartM)]);
}

/** `own` is the figure for this unit; each other figure comes with what one unit holds of its unit. */
function inUnit(crop: CropFacts, size: number, own: YieldBand | null, ...others: (readonly [YieldBand | null, number])[]): PerUnit {
  if (own) return { size, band: own, note: null };
  const found = others.find(([band, holds]) => band !== null && !Number.isNaN(holds));
  if (!found?.[0] || !crop.spacingCm) return { size, band: null, note: null };
  const [band, holds] = found;
  const { plant, row } = crop.spacingCm;
  return {
    size,
    band: { low: band.low * holds, likely: band.likely * holds, high: band.high * holds },
    note: `The book gives this crop's yield by another measure; reckoned with plants ${plant} cm apart in rows ${row} cm apart.`,
  };
}

/** Spread of a week's picking around its share, of the logarithm (common practice). */
const WEEK_SD = 0.35;
/** Before this share of the season has passed, picks say nothing about the rest; and a wild ratio is cut (common practice). */
const SAYS_NOTHING_BEFORE = 0.02;
const CLIP = 2;

/**
 * Factor on what is still to come after `grams` were picked while the plan had `share` of `likelyGrams` come in `weeks` weeks:
 * exp(B ln(grams / (share · likely))), B = σ² / (σ² + 0.35² / weeks); and the spread that is left, σ √(1 − B).
 */
export function pickCorrection(grams: number, share: number, likelyGrams: number, weeks: number, sigmaLn: number): { factor: number; sigmaLn: number } {
  if (share < SAYS_NOTHING_BEFORE || grams <= 0 || likelyGrams <= 0 || sigmaLn === 0) return { factor: 1, sigmaLn };
  const weight = sigmaLn ** 2 / (sigmaLn ** 2 + WEEK_SD ** 2 / weeks);
  const ratio = Math.min(CLIP, Math.max(-CLIP, Math.log(grams / (share * likelyGrams))));
  return { factor: Math.exp(weight * ratio), sigmaLn: sigmaLn * Math.sqrt(1 - weight) };
}
