/** The plate of the calendar: the year as weeks, all together above, one row for each crop, frost, today and the chosen week. */
import { useMemo } from "preact/hooks";
import type { Calendar, CalendarWeek } from "#shared/contracts/calendar.ts";
import type { DateBand } from "#shared/contracts/common.ts";
import { amount, day, MONTHS, plain, tableUnit, weekNumber, weightCell } from "../../format.ts";
import { units } from "../../units.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { AllTogether } from "./all-together.tsx";
import { CropRow } from "./crop-row.tsx";
import { layOut, monthSpans, type Plate } from "./plate.ts";
import { eatingLabel } from "../../parts/week-words.ts";
import type { YearFigures } from "./year.ts";

const NB = "\u00a0";

interface YearSheetProps {
  readonly calendar: Calendar;
  readonly figures: YearFigures;
  /** Index of the chosen week. */
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

export function YearSheet(props: YearSheetProps) {
  return <Measured class="year-plot">{(room) => <Drawn {...props} room={room} />}</Measured>;
}

function Drawn({ calendar, figures, chosen, onChoose, room }: YearSheetProps & { readonly room: Room }) {
  const plate = useMemo(() => layOut(figures, room, tableUnit().grams), [figures, room, units.value]);
  const still = useMemo(() => <Still calendar={calendar} figures={figures} plate={plate} />, [calendar, figures, plate, units.value]);
  const choose = (event: MouseEvent): void => {
    const box = event.currentTarget instanceof Element ? event.currentTarget.getBoundingClientRect() : null;
    if (box) onChoose(plate.weekAt(event.clientX - box.left));
  };
  const x = plate.x(chosen);
  const frame = { x, y: plate.head, width: plate.week, height: plate.bottom - plate.head + 2.1 * plate.rem };
  return (
    <svg width={plate.width} height={plate.height} viewBox={`0 0 ${plate.width} ${plate.height}`} role="img" aria-labelledby="year-words" onClick={choose}>
      <rect {...frame} class="k-pick" />
      {still}
      <WeekAxis figures={figures} plate={plate} chosen={chosen} />
      <rect {...frame} class="k-chosen" />
    </svg>
  );
}

function Still({ calendar, figures, plate }: { readonly calendar: Calendar; readonly figures: YearFigures; readonly plate: Plate }) {
  const { width, rem, head, stripBase } = plate;
  const best = Math.max(0, ...figures.total.likely, ...figures.total.picked);
  return (
    <g>
      <Months figures={figures} plate={plate} />
      <text x={width - 4.9 * rem} y={head - 0.4 * rem} class="end">
        best week
      </text>
      <text x={width} y={head - 0.4 * rem} class="end">
        season
      </text>
      <text x={width} y={1.35 * rem} class="end">
        {tableUnit().long}
      </text>
      <StripScale plate={plate} />
      <AllTogether figures={figures} ground={plate.ground(stripBase)} id="year" />
      <text x={0} y={stripBase - 0.35 * rem} class="t-name">
        All together
      </text>
      <text x={width - 4.9 * rem} y={stripBase - 0.35 * rem} class="t-fig end">
        {weightCell(best)}
      </text>
      <EatingWords calendar={calendar} figures={figures} plate={plate} />
      <OverWords calendar={calendar} figures={figures} plate={plate} />
      {plate.rows.map((row) => (
        <CropRow key={row.series.row.crop} row={row} plate={plate} figures={figures} />
      ))}
      <Frost band={calendar.frost.lastSpring} word="last frost" today={figures.today} plate={plate} />
      <Frost band={calendar.frost.firstAutumn} word="first frost" today={figures.today} plate={plate} />
      <TodayLine figures={figures} plate={plate} />
    </g>
  );
}

function Months({ figures, plate }: { readonly figures: YearFigures; readonly plate: Plate }) {
  return (
    <>
      {monthSpans(figures, plate).map(({ month, from, to }) => (
        <g key={month}>
          {month > 0 && <line x1={from} x2={from} y1={plate.head - 0.9 * plate.rem} y2={plate.bottom} class="k-rule" />}
          <text x={(from + to) / 2} y={plate.head - 0.4 * plate.rem} class="mid k-halo">
            {plate.week > 0.94 * plate.rem ? MONTHS[month] : MONTHS[month]?.slice(0, 3)}
          </text>
        </g>
      ))}
    </>
  );
}

/** Kilograms beside the strip; every hill on the plate has the same scale. */
function StripScale({ plate }: { readonly plate: Plate }) {
  const ground = plate.ground(plate.stripBase);
  const top = plate.marks[plate.marks.length - 1] ?? 0;
  return (
    <>
      <line x1={0} x2={plate.width} y1={plate.stripBase} y2={plate.stripBase} class="k-axis" />
      <line x1={plate.left} x2={plate.left} y1={ground.y(top)} y2={plate.stripBase} class="k-axis" />
      {plate.marks.map((grams) => (
        <g key={grams}>
          <line x1={plate.left - 6} x2={plate.left} y1={ground.y(grams)} y2={ground.y(grams)} class="k-axis" />
          <text x={plate.left - 10} y={ground.y(grams) + 0.28 * plate.rem} class="end">
            {plain(grams / tableUnit().grams)}
            {grams === top ? `${NB}${tableUnit().word}` : ""}
          </text>
        </g>
      ))}
    </>
  );
}

function EatingWords({ calendar, figures, plate }: { readonly calendar: Calendar; readonly figures: YearFigures; readonly plate: Plate }) {
  const { eats } = figures.total;
  const label = eatingLabel(figures.total, calendar.eatsGrams);
  if (!label) return null;
  const y = plate.ground(plate.stripBase).y(eats[label.level] ?? 0);
  const words = plate.roomy ? `${label.words} a week` : label.words;
  // clear of the bars of what was picked, with a line to where it belongs
  const { at } = label;
  const left = plate.x(at) - (words.length * 0.55 + 1) * plate.rem < plate.left;
  return (
    <g>
      {!left && at < label.level && <line x1={plate.x(at)} x2={plate.x(label.level)} y1={y} y2={y} class="k-waits" />}
      <text x={left ? plate.left + 4 : plate.x(at) - 6} y={left ? y - 6 : y + 4} class={`t-ink t-small k-halo${left ? "" : " end"}`}>
        {words}
      </text>
    </g>
  );
}

/** The surplus in words, in the quiet sky after the last weeks that are much over, or before the first. */
function OverWords({ calendar, figures, plate }: { readonly calendar: Calendar; readonly figures: YearFigures; readonly plate: Plate }) {
  const { over } = figures.total;
  const most = Math.max(0, ...over);
  if (calendar.overGrams < 50 || most < 50) return null;
  const { rem } = plate;
  const much = over.map((grams) => grams >= 0.15 * most);
  const after = plate.x(much.lastIndexOf(true) + 1.5);
  const before = plate.x(much.indexOf(true)) - rem;
  const needs = 12.5 * rem;
  const end = after + needs >= plate.end;
  if (end && before - needs < plate.left) return null;
  const [x, anchor] = end ? [before, " end"] : [after, ""];
  const y = plate.head + 2.2 * rem;
  const week = figures.weeks[over.indexOf(most)] as CalendarWeek;
  return (
    <g>
      <text x={x} y={y} class={`t-over t-name k-halo${anchor}`}>
        {amount(calendar.overGrams)} over
      </text>
      <text x={x} y={y + 1.25 * rem} class={`t-over k-halo${anchor}`}>
        what we eat, from now on;
      </text>
      <text x={x} y={y + 2.4 * rem} class={`t-over k-halo${anchor}`}>
        most in week {weekNumber(week.week)}: {amount(most)}
      </text>
    </g>
  );
}

function Frost({ band, word, today, plate }: { readonly band: DateBand | null; readonly word: string; readonly today: string; readonly plate: Plate }) {
  if (!band) return null;
  const [a, at, b] = [plate.xOfDay(band.low), plate.xOfDay(band.likely), plate.xOfDay(band.high)];
  if (at < plate.left || at > plate.end) return null;
  const y = 1.35 * plate.rem;
  const known = band.low === band.high;
  return (
    <g>
      <path d={`M${a} ${y - 3}V${y + 3}M${a} ${y}H${b}M${b} ${y - 3}V${y + 3}`} class="k-cold" />
      <line x1={at} x2={at} y1={y - 5} y2={plate.bottom} class="k-cold k-dots" />
      <circle cx={at} cy={y} r={3.2} class="k-cold-fill" />
      <text x={at} y={0.65 * plate.rem} class="t-cold mid">
        {plate.roomy ? `${word} ${known ? "" : "most likely "}${day(band.likely, today)}` : word}
      </text>
    </g>
  );
}

function TodayLine({ figures, plate }: { readonly figures: YearFigures; readonly plate: Plate }) {
  const x = plate.xOfDay(figures.today);
  if (x < plate.left || x > plate.end) return null;
  return (
    <g>
      <line x1={x} x2={x} y1={1.7 * plate.rem} y2={plate.bottom} class="k-today" />
      <text x={x} y={1.35 * plate.rem} class="t-ink mid t-bold k-halo">
        {plate.roomy ? `today ${day(figures.today, figures.today)}` : "today"}
      </text>
    </g>
  );
}

function WeekAxis({ figures, plate, chosen }: { readonly figures: YearFigures; readonly plate: Plate; readonly chosen: number }) {
  const { bottom, rem } = plate;
  const y = bottom + 1.55 * rem;
  return (
    <g>
      <line x1={plate.left} x2={plate.end} y1={bottom} y2={bottom} class="k-axis" />
      <path d={figures.weeks.map((_, i) => `M${plate.x(i).toFixed(1)} ${bottom}v5`).join("")} class="k-axis" />
      {figures.weeks.map((week, i) =>
        i % 4 === 1 && Math.abs(i - chosen) > 1 ? (
          <text key={week.week} x={plate.x(i + 0.5)} y={y} class="mid">
            {weekNumber(week.week)}
          </text>
        ) : null,
      )}
      <text x={plate.x(chosen + 0.5)} y={y} class="mid t-ink t-bold">
        {weekNumber(figures.weeks[chosen]?.week ?? "0000-W00")}
      </text>
      <text x={0} y={y}>
        week
      </text>
    </g>
  );
}
