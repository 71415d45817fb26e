/** The same figures as the plate, as a table. */
import { useState } from "preact/hooks";
import { tableUnit, weekNumber, weekSpan, weightCell } from "../../format.ts";
import type { CropNames } from "../../parts/crop-names.ts";
import type { YearFigures } from "./year.ts";

/** Less is left blank: it would read 0.0. */
const LEAST_G = 50;
const cell = (grams: number): string => (grams >= LEAST_G ? weightCell(grams) : "");

export function YearTable({ figures, names }: { readonly figures: YearFigures; readonly names: CropNames }) {
  const [open, setOpen] = useState(false);
  return (
    <section class="sec">
      <details onToggle={(event) => setOpen(event.currentTarget instanceof HTMLDetailsElement && event.currentTarget.open)}>
        <summary class="word">The year as a table, in {tableUnit().long}</summary>
        {open && <Table figures={figures} names={names} />}
      </details>
    </section>
  );
}

function Table({ figures, names }: { readonly figures: YearFigures; readonly names: CropNames }) {
  const { weeks, crops, total, now } = figures;
  const columns = crops.filter(({ row }) => row.lift === null);
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label="The year as a table">
      <table class="year-table">
        <caption class="say">Picked before this week, likely from this week on. Crops that wait are not in the sum.</caption>
        <thead>
          <tr>
            <th scope="col">Week</th>
            {columns.map(({ row }) => (
              <th scope="col" class="num" key={row.crop}>
                {names.get(row.crop)?.label ?? row.name}
              </th>
            ))}
            <th scope="col" class="num">
              Sum
            </th>
            <th scope="col" class="num">
              Over
            </th>
          </tr>
        </thead>
        <tbody>
          {weeks.map((week, i) => (
            <tr key={week.week}>
              <th scope="row">
                {weekNumber(week.week)} · {weekSpan(week.week, "short")}
              </th>
              {columns.map(({ row, picked, likely }) => (
                <td class="num" key={row.crop}>
                  {cell((i < now ? picked[i] : likely[i]) ?? 0)}
                </td>
              ))}
              <td class="num">{weightCell((i < now ? total.picked[i] : total.likely[i]) ?? 0)}</td>
              <td class="num">{cell(week.surplusGrams)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
