/**
 * The lag form as the search wants it: start x of the project is variable x, each "one or the other" gets a 0/1 variable behind
 * them, and every lag becomes two arcs between bounds. Arcs with a guard hold once the guard literal does.
 */
import { NONE, type Windows } from "./windows.ts";
import type { Capacity, Pair, Project, Use } from "./project.ts";

export interface Arcs {
  /** Arc k says now[to] ≥ now[from] + length. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly length: Int32Array;
  /** Literal (b, v) that switches the arc on; b = −1 where it always holds. */
  readonly guardB: Int32Array;
  readonly guardV: Int32Array;
  /** Arcs by the bound they leave from: leaving[first[b]] … leaving[first[b + 1] − 1]. */
  readonly first: Int32Array;
  readonly leaving: Int32Array;
  /** Arcs by the bound that switches them on. */
  readonly switchedBy: readonly (readonly number[])[];
}

export interface SearchModel {
  readonly variables: number;
  readonly starts: number;
  readonly end: number;
  readonly arcs: Arcs;
  /** Literals in turn; at least one of each holds. */
  readonly clauses: readonly (readonly number[])[];
  readonly capacities: readonly Capacity[];
  /** By start with a choice: option → its 0/1 variable, −1 where it cannot be taken. */
  readonly choiceOf: readonly (readonly number[] | undefined)[];
}

interface Guard {
  readonly b: number;
  readonly v: number;
}

interface Gap {
  readonly from: number;
  readonly to: number;
  readonly min: number;
}

const isTrue = (variable: number): Guard => ({ b: 2 * variable, v: 1 });
const isFalse = (variable: number): Guard => ({ b: 2 * variable + 1, v: 0 });

export function searchModel(project: Project, windows: Windows): SearchModel {
  const builder = new Builder(project, windows);
  return builder.build();
}

class Builder {
  private variables: number;
  private readonly arcs: (Gap & { guard: Guard | null })[] = [];
  private readonly clauses: number[][] = [];
  private readonly choiceOf: (readonly number[] | undefined)[];
  private readonly project: Project;
  private readonly windows: Windows;

  constructor(project: Project, windows: Windows) {
    this.project = project;
    this.windows = windows;
    this.variables = project.starts;
    this.choiceOf = new Array<undefined>(project.starts);
  }

  build(): SearchModel {
    const { project } = this;
    for (const lag of strongest(project.lags)) this.arcs.push({ ...lag, guard: null });
    this.addChoices();
    const gaps = ({ a, b, ab, ba }: Pair): [Gap, Gap] => [{ from: a, to: b, min: ab }, { from: b, to: a, min: ba }];
    const pairs = [...pairsOfCapacities(project, this.windows), ...project.pairs.filter((pair) => pair.option < 0).map(gaps)];
    for (const [one, other] of undominated(pairs)) this.addEither(one, other);
    for (const pair of project.pairs) if (pair.option >= 0) this.addEitherIfBoth(pair, ...gaps(pair));
    const { starts, end } = project;
    // An option that cannot be taken takes nothing.
    const possible = (use: Use): boolean => use.option < 0 || (this.choiceOf[use.from]?.[use.option] ?? -1) >= 0;
    const capacities = project.capacities
      .map((capacity) => ({ ...capacity, uses: capacity.uses.filter(possible) }))
      .filter(({ uses, limit }) => uses.reduce((sum, use) => sum + use.amount, 0) > limit);
    return { variables: this.variables, starts, end, arcs: this.laidOut(), clauses: this.clauses, capacities, choiceOf: this.choiceOf };
  }

  private addChoices(): void {
    for (const { start, earliest } of this.project.choices) {
      const taken = earliest.map((at) => (at === null ? -1 : this.variables++));
      const open = taken.filter((variable) => variable >= 0);
      earliest.forEach((at, k) => {
        if (at !== null && at > 0) this.arcs.push({ from: 0, to: start, min: at, guard: isTrue(taken[k] as number) });
      });
      this.choiceOf[start] = taken;
      this.clauses.push(open.flatMap((variable) => lits(isTrue(variable))));
      open.forEach((one, k) => open.slice(k + 1).forEach((other) => this.clauses.push([...lits(isFalse(one)), ...lits(isFalse(other))])));
    }
  }

  /** One 0/1 variable says which comes first; where the windows leave one way only, it becomes a lag. */
  private addEither(one: Gap, other: Gap): void {
    const { paths, size } = this.windows;
    const implied = (gap: Gap): boolean => (paths[gap.from * size + gap.to] as number) >= gap.min;
    const refused = (gap: Gap): boolean => paths[gap.to * size + gap.from] !== NONE && gap.min + (paths[gap.to * size + gap.from] as number) > 0;
    if (implied(one) || implied(other)) return;
    if (refused(one)) this.arcs.push({ ...other, guard: null });
    else if (refused(other)) this.arcs.push({ ...one, guard: null });
    else {
      const first = this.variables++;
      this.arcs.push({ ...one, guard: isTrue(first) }, { ...other, guard: isFalse(first) });
    }
  }

  private addEitherIfBoth({ a, b, option }: Pair, one: Gap, other: Gap): void {
    const takes = [this.choiceOf[a]?.[option] ?? -1, this.choiceOf[b]?.[option] ?? -1];
    if (takes.some((variable) => variable < 0)) return;
    const first = this.variables++;
    const second = this.variables++;
    this.arcs.push({ ...one, guard: isTrue(first) }, { ...other, guard: isTrue(second) });
    this.clauses.push([...takes.flatMap((variable) => lits(isFalse(variable))), ...lits(isTrue(first)), ...lits(isTrue(second))]);
  }

  private laidOut(): Arcs {
    // A lag p → q lifts q's "at least" by p's, and p's "at most" by q's.
    const both = this.arcs.flatMap(({ from, to, min, guard }) => [
      { from: 2 * from, to: 2 * to, min, guard },
      { from: 2 * to + 1, to: 2 * from + 1, min, guard },
    ]);
    const bounds = 2 * this.variables;
    const byFrom = Array.from({ length: bounds }, (): number[] => []);
    const switchedBy = Array.from({ length: bounds }, (): number[] => []);
    both.forEach(({ from, guard }, k) => {
      byFrom[from]?.push(k);
      if (guard) switchedBy[guard.b]?.push(k);
    });
    const first = new Int32Array(bounds + 1);
    byFrom.forEach((list, b) => (first[b + 1] = (first[b] as number) + list.length));
    return {
      from: Int32Array.from(both, (arc) => arc.from),
      to: Int32Array.from(both, (arc) => arc.to),
      length: Int32Array.from(both, (arc) => arc.min),
      guardB: Int32Array.from(both, (arc) => arc.guard?.b ?? -1),
      guardV: Int32Array.from(both, (arc) => arc.guard?.v ?? 0),
      first,
      leaving: Int32Array.from(byFrom.flat()),
      switchedBy,
    };
  }
}

const lits = ({ b, v }: Guard): number[] => [b, v];

/** Of several lags between the same starts only the longest matters. */
function strongest(lags: readonly Gap[]): Gap[] {
  const best = new Map<string, Gap>();
  for (const { from, to, min } of lags) {
    const key = `${from} ${to}`;
    const known = best.get(key);
    if (from !== to && (!known || known.min < min)) best.set(key, { from, to, min });
  }
  return [...best.values()];
}

/** Two uses that together are more than there is cannot overlap. One that may last no time at all is left to the timetable. */
function pairsOfCapacities({ capacities }: Project, { paths, size }: Windows): [Gap, Gap][] {
  const lasts = (use: Use): boolean => (paths[use.from * size + use.to] as number) + use.tail > use.head;
  return capacities.flatMap(({ uses, limit }) =>
    uses.flatMap((one, at) =>
      uses.slice(at + 1).flatMap((other): [Gap, Gap][] => {
        if (one.option >= 0 || other.option >= 0 || one.amount + other.amount <= limit) return [];
        if ((one.from === 0 && other.from === 0) || !lasts(one) || !lasts(other)) return [];
        return [[{ from: one.to, to: other.from, min: one.tail - other.head }, { from: other.to, to: one.from, min: other.tail - one.head }]];
      }),
    ),
  );
}

/** A pair between the same starts with shorter gaps both ways says nothing new. */
function undominated(pairs: readonly [Gap, Gap][]): [Gap, Gap][] {
  const best = new Map<string, [Gap, Gap][]>();
  for (const pair of pairs) {
    const [one, other] = pair[0].from <= pair[1].from ? pair : [pair[1], pair[0]];
    const key = `${one.from} ${one.to} ${other.from} ${other.to}`;
    const rivals = best.get(key) ?? [];
    if (rivals.some(([a, b]) => a.min >= one.min && b.min >= other.min)) continue;
    best.set(key, [...rivals.filter(([a, b]) => a.min > one.min || b.min > other.min), [one, other]]);
  }
  return [...best.values()].flat();
}
