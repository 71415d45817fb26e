/**
 * What a household of so many people eats fresh in a week of each crop's season, by the book: rows of seed-data/eats.csv times people.
 * A starting belief until the household says its own figures. Whole grams as picked.
 */
export interface EatsRow {
  readonly crop: string;
  readonly gramsPerPersonWeek: number;
}

export function bookEats(rows: readonly EatsRow[], people: number): Map<string, number> {
  return new Map(rows.map((row) => [row.crop, Math.round(row.gramsPerPersonWeek * people)]));
}
