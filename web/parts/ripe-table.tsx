/** What ripens in a week, in kilograms, with a range line for each crop on one scale. */
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import { tableUnit, weekNumber, weightCell, weightSpanCell } from "../format.ts";
import { RangeLine } from "./range-line.tsx";
import { ripeCrops } from "./week-words.ts";
import type { CropNames } from "./crop-names.ts";

export function RipeTable({ week, names, width }: { readonly week: CalendarWeek; readonly names: CropNames; readonly width: number }) {
  const crops = ripeCrops(week);
  if (crops.length === 0) return null;
  const max = Math.max(1000, ...crops.map((crop) => crop.grams.high));
  return (
    <>
      <table class="ripe">
        <caption class="vh">What ripens in week {weekNumber(week.week)}</caption>
        <thead>
          <tr>
            <th scope="col">Crop</th>
            <th scope="col">
              <span class="vh">Picture</span>
            </th>
            <th scope="col" class="num">
              Likely, {tableUnit().word}
            </th>
            <th scope="col" class="num">
              Low–high
            </th>
          </tr>
        </thead>
        <tbody>
          {crops.map((crop) => (
            <tr key={crop.crop}>
              <th scope="row">
                {names.get(crop.crop)?.label ?? crop.name}
                {crop.waits && <span class="waits">can wait</span>}
              </th>
              <td>
                <RangeLine {...crop.grams} max={max} width={width} {...(crop.waits ? {} : { mark: crop.freshGrams })} />
              </td>
              <td class="num">{weightCell(crop.grams.likely)}</td>
              <td class="num quiet">{weightSpanCell(crop.grams.low, crop.grams.high)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="say">Line: low to high in 8 seasons of 10. Dot: most likely. Upright stroke: what we eat of it fresh.</p>
    </>
  );
}
