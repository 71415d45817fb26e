/**
 * Small seasons and the best plan of each by trying everything: every number of batches in every week, and for each of them the best way to
 * eat, give and keep, lot by lot, in steps of 100 g. Slow and plain; shares nothing with the planner but the shape of its input.
 */
import type { Season } from "#shared/engines/season-plan/index.ts";
import type { Random } from "#shared/kernel/seeded-random.ts";

/** All grams are multiples of this. */
const STEP_GRAMS = 100;

/** One crop or two, three methods at most, two or three weeks; amounts in whole units, so that everything can be tried. */
export function smallSeason(random: Random): Record<string, unknown> {
  const weeks = 2 + random.below(2);
  const crops = Array.from({ length: 1 + random.below(2) }, (_, c) => ({
    crop: `crop-${c}`,
    keepWeeks: 1 + random.below(3),
    freshGrams: STEP_GRAMS * random.below(3),
    giveGrams: STEP_GRAMS * random.below(2),
    harvestGrams: { only: Array.from({ length: weeks }, () => STEP_GRAMS * random.below(9)) },
  }));
  const methods = Array.from({ length: 1 + random.below(3) }, (_, m) => ({
    id: `method-${m}`,
    way: "freeze",
    keptIn: random.below(4) === 0 ? "none" : "freezer",
    process: "not-needed",
    uses: crops.filter((_, c) => c === m % crops.length || random.below(4) === 0).map(({ crop }) => ({ crop, grams: STEP_GRAMS * (1 + random.below(3)) })),
    sessionBatches: { min: 1 + random.below(2), max: 2 + random.below(2) },
    perSession: { "hands-on": random.below(3) },
    perBatch: { "hands-on": 1 + random.below(3), jars: random.below(3) },
    portions: 2,
  }));
  return {
    format: "season-plan/1",
    firstWeek: "2027-W30",
    weeks,
    scenarios: [{ id: "only", weight: 1 }],
    crops,
    resources: [
      { id: "hands-on", kind: "weekly", unit: "min", amount: 4 + random.below(12) },
      { id: "jars", kind: "consumed", unit: "jars", amount: 2 + random.below(12) },
    ],
    equipment: [],
    methods,
    targets: [{ id: "wanted", methods: [methods[0]?.id], portions: 2 + random.below(6), atWeek: weeks - 1 }],
  };
}

export interface Least {
  readonly lost: number;
  readonly missing: number;
  readonly tried: number;
}

/** Least loss, and the least missing among the plans that lose no more. */
export function tryEverything(season: Season): Least {
  const cells = season.methods.flatMap((method, m) => Array.from({ length: season.weeks }, (_, week) => ({ method, m, week })));
  const made = season.methods.map(() => new Array<number>(season.weeks).fill(0));
  let best = { lost: Infinity, missing: Infinity };
  let tried = 0;
  const place = (i: number): void => {
    const cell = cells[i];
    if (!cell) {
      if (!withinLimits(season, made)) return;
      const lost = season.crops.reduce((sum, _, c) => sum + leastLost(season, c, made), 0);
      tried++;
      const missing = missingShare(season, made);
      if (lost < best.lost || (lost === best.lost && missing < best.missing)) best = { lost, missing };
      return;
    }
    for (let batches = 0; batches <= cell.method.sessionBatches.max; batches++) {
      if (batches > 0 && batches < cell.method.sessionBatches.min) continue;
      (made[cell.m] as number[])[cell.week] = batches;
      place(i + 1);
    }
    (made[cell.m] as number[])[cell.week] = 0;
  };
  place(0);
  return { ...best, tried };
}

function withinLimits(season: Season, made: readonly (readonly number[])[]): boolean {
  const used = (id: string, week: number): number =>
    season.methods.reduce((sum, method, m) => {
      const batches = made[m]?.[week] ?? 0;
      return batches === 0 ? sum : sum + (method.perSession[id] ?? 0) + batches * (method.perBatch[id] ?? 0);
    }, 0);
  return season.resources.every(({ id, kind, amount }) => {
    let soFar = 0;
    return amount.every((most, week) => {
      soFar = (kind === "consumed" ? soFar : 0) + used(id, week);
      return soFar <= most;
    });
  });
}

/** Every way to use a crop week by week from lots of every age; Infinity where a batch lacks something. */
function leastLost(season: Season, c: number, made: readonly (readonly number[])[]): number {
  const crop = season.crops[c];
  if (!crop) return 0;
  const seen = new Map<string, number>();
  const from = (week: number, lots: readonly number[]): number => {
    if (week === season.weeks) return 0;
    const key = `${week}:${lots.join()}`;
    const known = seen.get(key);
    if (known !== undefined) return known;
    // lots[age]: grams picked so many weeks ago
    const here = [(crop.harvestGrams[0]?.[week] ?? 0) / STEP_GRAMS, ...lots];
    const cooked = season.methods.reduce((sum, { uses }, m) => sum + (made[m]?.[week] ?? 0) * (uses.find((use) => use.crop === crop.crop)?.grams ?? 0), 0) / STEP_GRAMS;
    let least = Infinity;
    for (let more = 0; more <= ((crop.freshGrams[week] ?? 0) + (crop.giveGrams[week] ?? 0)) / STEP_GRAMS; more++) {
      for (const left of takenFrom(here, cooked + more)) {
        const lost = STEP_GRAMS * (left[crop.keepWeeks - 1] ?? 0);
        least = Math.min(least, lost + from(week + 1, left.slice(0, crop.keepWeeks - 1)));
      }
    }
    seen.set(key, least);
    return least;
  };
  return from(0, new Array<number>(crop.keepWeeks - 1).fill(0));
}

/** All ways to take so much from lots of different age. */
function takenFrom(lots: readonly number[], amount: number): number[][] {
  const [first, ...rest] = lots;
  if (first === undefined) return amount === 0 ? [[]] : [];
  const ways: number[][] = [];
  for (let taken = 0; taken <= Math.min(first, amount); taken++) for (const others of takenFrom(rest, amount - taken)) ways.push([first - taken, ...others]);
  return ways;
}

function missingShare(season: Season, made: readonly (readonly number[])[]): number {
  return season.targets.reduce((sum, { methods, portions }) => {
    const have = season.methods.reduce((all, { id, keptIn, portions: each }, m) => (methods.includes(id) && keptIn !== "none" ? all + each * (made[m] ?? []).reduce((a, b) => a + b, 0) : all), 0);
    const share = Math.max(0, 1 - have / portions);
    return sum + 100 * (share + Math.max(0, share - 0.5));
  }, 0);
}
