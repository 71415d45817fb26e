/** One crop's row: ground line while it stands, sown marks, pegs of what was picked, hills of what is expected, or one lift. */
import type { DateBand } from "#shared/contracts/common.ts";
import { areaPath, hillPoints, linePath, pegsPath, runsOf, type Ground } from "../../parts/hills.ts";
import { weightCell, seasonCell, shortDay } from "../../format.ts";
import type { Plate, PlateRow } from "./plate.ts";
import type { CropSeries, YearFigures } from "./year.ts";

/** Weeks with less in a good season are not drawn. */
const LEAST_G = 60;
/** Rem of hill above which its low edge is drawn inside it. */
const LOW_LINE_REM = 1.5;

export function CropRow({ row, plate, figures }: { readonly row: PlateRow; readonly plate: Plate; readonly figures: YearFigures }) {
  const { series, base, name } = row;
  const { rem, width } = plate;
  const ground = plate.ground(base);
  const above = base - 0.35 * rem;
  return (
    <g>
      <line x1={0} x2={width} y1={base} y2={base} class="k-rule" />
      {name.map((line, i) => (
        <text key={i} x={0} y={above - (name.length - 1 - i) * 1.15 * rem} class="t-name">
          {line}
        </text>
      ))}
      <Standing series={series} plate={plate} base={base} />
      <path d={pegsPath(series.picked, ground)} class="k-picked" />
      {series.row.lift ? <Lift lift={series.row.lift} plate={plate} base={base} today={figures.today} /> : <Hills series={series} ground={ground} rem={rem} />}
      <text x={width - 4.9 * rem} y={above} class="t-fig end">
        {series.row.lift ? "–" : bestWeek(series.row.bestWeekGrams)}
      </text>
      <text x={width} y={above} class="t-fig end">
        {seasonCell(series.row.seasonGrams.low, series.row.seasonGrams.high)}
      </text>
    </g>
  );
}

/** A few grams of a herb are not nothing. */
function bestWeek(grams: number): string {
  const cell = weightCell(grams);
  return grams > 0 && Number(cell) === 0 ? "<0.1" : cell;
}

function Hills({ series, ground, rem }: { readonly series: CropSeries; readonly ground: Ground; readonly rem: number }) {
  return (
    <>
      {runsOf(series.high, ground.now, LEAST_G).map((run) => {
        const points = (values: readonly number[]) => hillPoints(values, run, ground);
        const tall = ground.base - ground.y(Math.max(...series.high.slice(run.first, run.last + 1))) > LOW_LINE_REM * rem;
        return (
          <g key={run.first}>
            <path d={areaPath(points(series.high), ground.base)} class="k-edge" />
            <path d={areaPath(points(series.likely), ground.base)} class="k-hill" />
            {tall && <path d={linePath(points(series.low))} class="k-low" />}
          </g>
        );
      })}
    </>
  );
}

/** From the sowing to the last likely day in the ground. */
function Standing({ series, plate, base }: { readonly series: CropSeries; readonly plate: Plate; readonly base: number }) {
  const within = (px: number): number => Math.max(plate.left, Math.min(plate.end, px));
  return (
    <>
      {series.row.sowings.map(({ id, from, until }) => {
        if (from === null) return null;
        const [a, b] = [plate.xOfDay(from), until === null ? plate.end : plate.xOfDay(until)];
        if (a > plate.end || b < plate.left) return null;
        return (
          <g key={id}>
            <line x1={within(a)} x2={within(b)} y1={base} y2={base} class="k-axis" />
            {a >= plate.left && <circle cx={a} cy={base} r={0.19 * plate.rem} class="k-sown" />}
          </g>
        );
      })}
    </>
  );
}

/** A lift that lies behind is a fact: the pegs show it. */
function Lift({ lift, plate, base, today }: { readonly lift: DateBand; readonly plate: Plate; readonly base: number; readonly today: string }) {
  if (lift.high < today) return null;
  const [a, at, b] = [plate.xOfDay(lift.low), plate.xOfDay(lift.likely), plate.xOfDay(lift.high)];
  if (b < plate.left || a > plate.end) return null;
  const y = base - 0.85 * plate.rem;
  const r = 0.34 * plate.rem;
  const words = plate.roomy ? `one lift, about ${shortDay(lift.likely, today)}` : "one lift";
  const fits = b + (words.length * 0.5 + 1) * plate.rem < plate.end;
  return (
    <g>
      <path d={`M${a} ${y - 4}V${y + 4}M${a} ${y}H${b}M${b} ${y - 4}V${y + 4}`} class="k-range k-nofill" />
      <path d={`M${at - r} ${y}L${at} ${y - r}L${at + r} ${y}L${at} ${y + r}Z`} class="k-hill" />
      <text x={fits ? b + 0.6 * plate.rem : a - 0.6 * plate.rem} y={y + 0.28 * plate.rem} class={`k-halo${fits ? "" : " end"}`}>
        {words}
      </text>
    </g>
  );
}
