/**
 * A season drawn from a seed, in the form `season-plan/1`: hills of harvest, ready patterns of methods, limits as shares of what making
 * everything would need. Invented figures in the range of a household of three; the truth of no test.
 */
import { seededRandom, type Random } from "#shared/kernel/seeded-random.ts";

export interface DrawnSizes {
  readonly crops: number;
  readonly methods: number;
  readonly weeks: number;
  readonly seed: number;
}

type Json = Record<string, unknown>;
/** Litres, loads, jars … of one batch, and what it makes; common practice, no source. */
const PATTERNS: readonly { way: string; keptIn: string; grams: number; portions: number; keepWeeks: number; session: number; batch: Record<string, number>; perSession: number }[] = [
  { way: "freeze", keptIn: "freezer", grams: 1000, portions: 8, keepWeeks: 40, session: 5, perSession: 10, batch: { "hands-on": 20, freezer: 1.5, "freeze-load": 1000 } },
  { way: "bottle", keptIn: "shelf", grams: 2500, portions: 12, keepWeeks: 52, session: 3, perSession: 40, batch: { "hands-on": 40, jars: 4, lids: 4, hob: 100, sugar: 300 } },
  { way: "pickle", keptIn: "shelf", grams: 1800, portions: 16, keepWeeks: 52, session: 2, perSession: 35, batch: { "hands-on": 35, jars: 4, lids: 4, vinegar: 800 } },
  { way: "dry", keptIn: "shelf", grams: 2000, portions: 10, keepWeeks: 40, session: 1, perSession: 10, batch: { "hands-on": 25, dryer: 1 } },
  { way: "cook", keptIn: "freezer", grams: 1300, portions: 6, keepWeeks: 16, session: 3, perSession: 15, batch: { "hands-on": 30, freezer: 2.4, "freeze-load": 2000, oven: 45 } },
];
const KEEPS = [1, 1, 1, 1, 2, 2, 3, 4, 6, 20];

export function drawnSeason({ crops: cropCount, methods: methodCount, weeks, seed }: DrawnSizes): Json {
  const random = seededRandom(seed);
  const crops = Array.from({ length: cropCount }, (_, c) => drawnCrop(random, c, weeks));
  const methods = Array.from({ length: methodCount }, (_, m) => drawnMethod(random, m, crops));
  const picked = Object.fromEntries(crops.map(({ crop, harvestGrams }) => [crop, harvestGrams.likely.reduce((a, b) => a + b, 0)]));
  const making = (id: string): number =>
    methods.reduce((sum, { uses, perBatch }) => {
      const rivals = methods.filter((other) => other.uses[0]?.crop === uses[0]?.crop).length;
      return sum + (((picked[uses[0]?.crop ?? ""] ?? 0) * 0.6) / (uses[0]?.grams ?? 1) / rivals) * (perBatch[id] ?? 0);
    }, 0);
  const share = (): number => 0.6 + 0.3 * random.next();
  const amount = (id: string, times: number): number => Math.max(1, Math.round(making(id) * share() * times));
  const weekly = (id: string, unit: string): Json => ({ id, kind: "weekly", unit, amount: Math.max(id === "dryer" ? 1 : 60, amount(id, 1 / weeks) * (id === "freeze-load" ? 2 : 1)) });
  return {
    format: "season-plan/1",
    firstWeek: "2027-W20",
    weeks,
    scenarios: [{ id: "likely", weight: 1 }],
    crops,
    resources: [
      weekly("hands-on", "min"), weekly("oven", "min"), weekly("hob", "min"), weekly("dryer", "loads"), weekly("freeze-load", "g"),
      { id: "freezer", kind: "held", unit: "l", amount: amount("freezer", 1) },
      { id: "jars", kind: "held", unit: "jars", amount: amount("jars", 1) },
      { id: "lids", kind: "consumed", unit: "lids", amount: amount("lids", 1) },
      { id: "vinegar", kind: "consumed", unit: "ml", amount: amount("vinegar", 1) },
      { id: "sugar", kind: "consumed", unit: "g", amount: amount("sugar", 1) },
    ],
    equipment: ["water-bath canner", "dryer"],
    methods,
    eatFromStorePortions: Array.from({ length: weeks }, (_, t) => (t < weeks / 2 ? 4 : 10)),
    targets: drawnTargets(random, methods, weeks),
    tastes: methods.map(({ id }) => ({ id, methods: [id], everyWeeks: weeks, tiers: [{ portions: 12, worth: 3 }, { portions: 12, worth: 1 }] })),
  };
}

function drawnCrop(random: Random, c: number, weeks: number): { crop: string; keepWeeks: number; freshGrams: number; giveGrams: number; harvestGrams: { likely: number[] } } {
  const keepWeeks = KEEPS[random.below(KEEPS.length)] ?? 1;
  const freshGrams = 50 * Math.round((450 + 800 * random.next()) / 50);
  const length = Math.min(weeks, keepWeeks >= 6 ? 2 + random.below(3) : 4 + random.below(8));
  const from = random.below(Math.max(1, weeks - length + 1));
  const total = freshGrams * length * (0.8 + 1.7 * random.next());
  const hill = Array.from({ length: weeks }, (_, t) => (t < from || t >= from + length ? 0 : Math.sin((Math.PI * (t - from + 0.5)) / length)));
  const whole = hill.reduce((a, b) => a + b, 0);
  return { crop: `crop-${String(c).padStart(2, "0")}`, keepWeeks, freshGrams, giveGrams: random.below(3) === 0 ? 300 : 0, harvestGrams: { likely: hill.map((height) => 100 * Math.round((total * height) / whole / 100)) } };
}

function drawnMethod(random: Random, m: number, crops: readonly { crop: string }[]): { id: string; uses: { crop: string; grams: number }[]; perBatch: Record<string, number>; portions: number } & Json {
  const pattern = PATTERNS[random.below(PATTERNS.length)] as (typeof PATTERNS)[number];
  const main = crops[m % crops.length]?.crop ?? "";
  const beside = random.below(4) === 0 ? crops[random.below(crops.length)]?.crop : undefined;
  const refused = random.below(10) === 0 && pattern.keptIn === "shelf" && pattern.way !== "dry";
  return {
    id: `method-${String(m).padStart(2, "0")}`,
    way: pattern.way,
    keptIn: pattern.keptIn,
    process: refused ? "none" : pattern.keptIn === "shelf" && pattern.way !== "dry" ? "tested" : "not-needed",
    needs: pattern.way === "dry" ? ["dryer"] : pattern.keptIn === "shelf" ? ["water-bath canner"] : [],
    uses: [{ crop: main, grams: pattern.grams }, ...(beside !== undefined && beside !== main ? [{ crop: beside, grams: 200 }] : [])],
    sessionBatches: { min: 1, max: pattern.session },
    perSession: { "hands-on": pattern.perSession },
    perBatch: { ...pattern.batch },
    portions: pattern.portions,
    keepWeeks: pattern.keepWeeks,
    eatPortions: 4,
  };
}

function drawnTargets(random: Random, methods: readonly { id: string; portions: number; process?: unknown }[], weeks: number): Json[] {
  const wanted = methods.filter(({ process }) => process !== "none");
  return Array.from({ length: 8 }, (_, i) => {
    const method = wanted[random.below(wanted.length)] as (typeof wanted)[number];
    return { id: `target-${i}`, methods: [method.id], portions: method.portions * (1 + random.below(3)), atWeek: weeks - 1 - random.below(3) };
  });
}
