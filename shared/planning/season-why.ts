/**
 * Why a line stands in the plan: what would be different with one batch less of it, all other batches kept and eating and giving free. Nothing is said
 * that is not such a difference.
 */
import type { Batches, Season, SeasonPlan } from "../engines/season-plan/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { addWeeks, type IsoWeek } from "../kernel/iso-week.ts";
import { listWords, weekSpanWords, weighedWords } from "../kernel/words.ts";
import { leastLost } from "./season-least-lost.ts";

export interface LineWhy {
  readonly lostGrams: number;
  /** Crops and weeks in which more would be lost, most first. */
  readonly lost: readonly { readonly crop: string; readonly week: number; readonly grams: number }[];
  /** Portions that targets and wishes would be shorter by. */
  readonly missing: readonly { readonly asked: string; readonly portions: number }[];
}

/** Asks what one batch less of each line would do; lines of the whole season, agreed ones among them. */
export class SeasonWhy {
  private readonly season: Season;
  private readonly lines: readonly Batches[];
  /** Lost with all lines, by crop, then week. */
  private readonly lostNow = new Map<string, readonly number[]>();
  private readonly shortNow: readonly number[];

  constructor(season: Season, plan: Pick<SeasonPlan, "planned">) {
    this.season = season;
    this.lines = plan.planned;
    this.shortNow = this.short(this.lines);
    for (const crop of season.crops) this.lostNow.set(crop.crop, leastLost(crop, this.takes(crop.crop, this.lines)));
  }

  /** Least that is lost with all lines, by crop. */
  get lostGrams(): number {
    return [...this.lostNow.values()].flat().reduce((sum, grams) => sum + grams, 0);
  }

  of(line: Batches): LineWhy {
    const less = this.lines.map((one) => (one.method === line.method && one.week === line.week ? { ...one, batches: one.batches - 1 } : one));
    const uses = this.season.methods.find(({ id }) => id === line.method)?.uses ?? [];
    const lost = uses.flatMap(({ crop }) => {
      const found = this.season.crops.find((one) => one.crop === crop);
      const now = this.lostNow.get(crop);
      if (!found || !now) return [];
      return leastLost(found, this.takes(crop, less)).map((grams, week) => ({ crop, week, grams: Math.round(grams - (now[week] ?? 0)) }));
    });
    const missing = this.short(less).map((portions, i) => ({ asked: this.asked[i]?.id ?? "", portions: portions - (this.shortNow[i] ?? 0) })).filter(({ portions }) => portions > 0.01);
    return { lostGrams: lost.reduce((sum, { grams }) => sum + grams, 0), lost: lost.filter(({ grams }) => grams > 0).sort((a, b) => b.grams - a.grams || a.week - b.week), missing };
  }

  private get asked() {
    return [...this.season.targets, ...this.season.wishes];
  }

  private takes(crop: string, lines: readonly Batches[]): number[] {
    const grams = new Array<number>(this.season.weeks).fill(0);
    for (const { method, week, batches } of lines) {
      const use = this.season.methods.find(({ id }) => id === method)?.uses.find((one) => one.crop === crop);
      if (use) grams[week] = (grams[week] ?? 0) + use.grams * batches;
    }
    return grams;
  }

  /** Portions short of each target and wish when nothing is eaten before it must be. */
  private short(lines: readonly Batches[]): number[] {
    const made = (methods: readonly string[], from: number, until: number, alive: (keepWeeks: number | null, week: number) => boolean): number =>
      lines.reduce((sum, { method, week, batches }) => {
        const found = methods.includes(method) ? this.season.methods.find(({ id }) => id === method) : undefined;
        return sum + (found && week >= from && week < until && alive(found.keepWeeks, week) ? found.portions * batches : 0);
      }, 0);
    const opening = (methods: readonly string[]): number => this.season.methods.reduce((sum, { id, opening: there }) => sum + (methods.includes(id) ? there : 0), 0);
    return [
      ...this.season.targets.map(({ methods, portions, atWeek }) => Math.max(0, portions - opening(methods) - made(methods, 0, atWeek + 1, (keep, week) => keep === null || week + keep > atWeek))),
      ...this.season.wishes.map(({ methods, portions, from, until }) => Math.max(0, portions - made(methods, from, until, () => true))),
    ];
  }
}

/** Rounds to nothing in a sentence. */
const WORTH_SAYING_GRAMS = 25;

/** In one or two sentences. `titles`: of what was asked for, by its id. */
export function whyWords({ lost, lostGrams, missing }: LineWhy, names: ReadonlyMap<string, string>, firstWeek: IsoWeek, titles: ReadonlyMap<string, string>): string {
  const sentences: string[] = [];
  if (lostGrams >= WORTH_SAYING_GRAMS) {
    const crops = [...new Set(lost.map(({ crop }) => cropWord(names.get(crop) ?? crop)))];
    const weeks = lost.map(({ week }) => week);
    const span = weekSpanWords(addWeeks(firstWeek, Math.min(...weeks)), addWeeks(firstWeek, Math.max(...weeks)));
    sentences.push(`With one batch less ${weighedWords(lostGrams)} of ${listWords(crops)} would be lost in ${span}.`);
  }
  for (const { asked, portions } of missing) sentences.push(`With one batch less ${titles.get(asked) ?? "what was asked for"} would be ${Math.round(portions)} ${Math.round(portions) === 1 ? "portion" : "portions"} shorter.`);
  return sentences.length > 0 ? sentences.join(" ") : "Nothing more would be lost without it: it is here for the store and the table.";
}
