/** One crop as seed-data/crops.csv holds it: the words that the forecast, the calendar and the kitchen share. */
import type { Band } from "./band.ts";

export type Habit = "one-cut" | "repeat" | "cut-again" | "stands" | "head+shoots";
export type Method = "direct" | "transplant" | "established";
/** Where a days-to-maturity figure starts counting. */
export type CountedFrom = "sowing" | "transplanting" | "planting";

/** A variety's own days to maturity, as its packet prints them; without `from` they count as the crop's own do. */
export interface VarietyDays {
  readonly low: number;
  readonly high: number;
  readonly from?: CountedFrom | undefined;
}

/** Cress is cut after some fifteen days, garlic lifted after some nine months; figures outside are not days to maturity. */
export const VARIETY_DAYS = { fewest: 15, most: 300 };

export interface YieldBand {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface CropFacts {
  readonly slug: string;
  readonly name: string;
  readonly family: string;
  readonly habit: Habit;
  /** Stands for years: counted from 1 February, never sown. */
  readonly perennial: boolean;
  /** As the table writes it: direct, transplant, established, sets, cloves, tuber, slips. */
  readonly usualMethod: string;
  /** Development base and upper temperature, °C. */
  readonly baseC: number;
  readonly upperC: number;
  /** Null for what stands for years. */
  readonly daysToMaturity: { readonly low: number; readonly high: number; readonly from: CountedFrom } | null;
  /** Mean temperature of the season the days figure was quoted for, °C. */
  readonly quotedMeanC: number | null;
  /** Thermal time to the first pick, °C d, from where the days figure counts (1 February for perennials). */
  readonly thermal: Band;
  /** The likely part of it that is left after emergence, where the crop is sown in place. */
  readonly thermalAfterEmergence: number | null;
  /** Spread of the logarithm of the requirement. */
  readonly sigmaLn: number;
  readonly frostClass: string;
  readonly tender: boolean;
  readonly killC: number | null;
  readonly germinationMinC: number | null;
  readonly emergence: { readonly thetaCd: number; readonly baseC: number } | null;
  readonly flowerToPickDays: { readonly low: number; readonly high: number } | null;
  readonly pickWeeks: { readonly low: number; readonly high: number };
  /** Grams as picked over a season. */
  readonly gramsPerPlant: YieldBand | null;
  readonly gramsPerRowM: YieldBand | null;
  readonly gramsPerM2: YieldBand | null;
  readonly keepDays: number;
  readonly keepAtC: number;
  readonly gramsPerPiece: number | null;
  readonly piece: string | null;
  /** Usual room of a plant in the row and between rows, cm; common practice, no source. */
  readonly spacingCm?: { readonly plant: number; readonly row: number } | null;
  readonly sources: readonly string[];
}

/**
 * Crops the grower lifts or cuts when he or she chooses: supply on the stem, not a pick that must happen, so never a glut
 * (habit `stands`; squash, onion, shallot and garlic keep for months once lifted).
 */
export function waitsForTheGrower(crop: CropFacts): boolean {
  return crop.habit === "stands" || (crop.habit === "one-cut" && crop.keepDays >= 90);
}

/**
 * One row of seed-data/crops.csv, by column name, as facts. Empty cells become null; °C, days, grams.
 * Throws RangeError that names the crop and the column when a cell cannot be read: a fault of the table, not of a person.
 */
export function cropFactsOf(row: Readonly<Record<string, string>>): CropFacts {
  const slug = row["slug"] ?? "";
  const number = (column: string): number | null => {
    const text = (row[column] ?? "").trim();
    if (text === "") return null;
    const value = Number(text);
    if (!Number.isFinite(value)) throw new RangeError(`${slug}: ${column} is not a number: ${text}`);
    return value;
  };
  const needed = (column: string): number => {
    const value = number(column);
    if (value === null) throw new RangeError(`${slug}: ${column} is empty`);
    return value;
  };
  const band = (column: string): YieldBand | null =>
    number(`${column}_likely`) === null ? null : { low: needed(`${column}_low`), likely: needed(`${column}_likely`), high: needed(`${column}_high`) };
  const [habit, perennial] = habitOf(slug, row["habit"] ?? "");
  const frostClass = row["frost_class"] ?? "";
  const thetaCd = number("emerge_theta_cd");
  return {
    slug,
    name: row["name"] ?? "",
    family: row["family"] ?? "",
    habit,
    perennial,
    usualMethod: row["method"] ?? "",
    baseC: needed("base_c"),
    upperC: needed("upper_c"),
    daysToMaturity: perennial ? null : { low: needed("days_low"), high: needed("days_high"), from: countedFromOf(slug, row["days_from"] ?? "") },
    quotedMeanC: number("quoted_mean_c"),
    thermal: { low: needed("thermal_low"), likely: needed("thermal_mid"), high: needed("thermal_high") },
    thermalAfterEmergence: number("thermal_mid_after_emergence"),
    sigmaLn: needed("sigma_ln"),
    frostClass,
    tender: frostClass === "tender",
    killC: number("kill_c"),
    germinationMinC: number("germ_min_c"),
    emergence: thetaCd === null ? null : { thetaCd, baseC: needed("emerge_base_c") },
    flowerToPickDays: spanOf(slug, row["flower_to_pick_days"] ?? ""),
    pickWeeks: { low: needed("pick_weeks_low"), high: needed("pick_weeks_high") },
    gramsPerPlant: band("g_plant"),
    gramsPerRowM: band("g_m_row"),
    gramsPerM2: band("g_m2"),
    keepDays: needed("keep_days"),
    keepAtC: needed("keep_at_c"),
    gramsPerPiece: number("g_per_piece"),
    piece: row["piece"]?.trim() || null,
    spacingCm: number("plant_spacing_cm") === null ? null : { plant: needed("plant_spacing_cm"), row: needed("row_spacing_cm") },
    sources: (row["sources"] ?? "").split(/\s+/).filter((code) => code !== ""),
  };
}

const HABITS: readonly Habit[] = ["one-cut", "repeat", "cut-again", "stands", "head+shoots"];

/** The table writes "repeat perennial" for what stands for years. */
function habitOf(slug: string, text: string): [Habit, boolean] {
  const perennial = text.endsWith(" perennial");
  const word = perennial ? text.slice(0, -" perennial".length) : text;
  const habit = HABITS.find((known) => known === word);
  if (habit === undefined) throw new RangeError(`${slug}: unknown habit ${text}`);
  return [habit, perennial];
}

function countedFromOf(slug: string, text: string): CountedFrom {
  if (text === "sowing" || text === "transplanting" || text === "planting") return text;
  throw new RangeError(`${slug}: days_from is ${text}`);
}

/** "45-60" or "20-27 from silk" as days. */
function spanOf(slug: string, text: string): { low: number; high: number } | null {
  if (text.trim() === "") return null;
  const found = /^(\d+)-(\d+)(?: from [a-z]+)?$/.exec(text.trim());
  if (!found) throw new RangeError(`${slug}: flower_to_pick_days is ${text}`);
  return { low: Number(found[1]), high: Number(found[2]) };
}
