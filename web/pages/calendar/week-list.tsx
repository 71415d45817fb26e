/** On a phone: a strip of the year, then the weeks as a list that opens to the same content as the week page. */
import type { Calendar, CalendarWeek } from "#shared/contracts/calendar.ts";
import { amount, amountSpan, weightCell, weekName, weekNumber, weekSpan, weekTitle, MONTHS } from "../../format.ts";
import { Hatch } from "../../parts/hatch.tsx";
import { Measured } from "../../parts/measured.tsx";
import { AllTogether } from "./all-together.tsx";
import { layOutStrip } from "./strip.ts";
import { WeekInList, type WeekProps } from "./week-page.tsx";
import { eatingLabel, leadingCrops, pickedWords } from "../../parts/week-words.ts";
import type { CropNames } from "../../parts/crop-names.ts";
import type { YearFigures } from "./year.ts";

/** Weeks with less have nothing that must be eaten. */
const LEAST_G = 50;

export function Strip({ calendar, figures }: { readonly calendar: Calendar; readonly figures: YearFigures }) {
  return (
    <Measured class="strip">
      {(room) => {
        const strip = layOutStrip(figures, calendar.frost, room);
        const { width, base, rem, ground } = strip;
        const eating = eatingLabel(figures.total, calendar.eatsGrams);
        const atLeft = eating !== null && ground.x(eating.at) < eating.words.length * 0.5 * rem;
        return (
          <svg width={width} height={base + 1.5 * rem} viewBox={`0 0 ${width} ${base + 1.5 * rem}`} role="img" aria-labelledby="year-words">
            {strip.months.slice(1).map(({ x }) => (
              <line key={x} x1={x} x2={x} y1={rem} y2={base + 6} class="k-rule" />
            ))}
            <AllTogether figures={figures} ground={ground} id="strip" />
            <line x1={0} x2={width} y1={base} y2={base} class="k-axis" />
            {eating && (
              <text x={atLeft ? 0 : ground.x(eating.at) - 4} y={ground.y(figures.total.eats[eating.level] ?? 0) - 4} class={`t-ink k-halo${atLeft ? "" : " end"}`}>
                {eating.words}
              </text>
            )}
            {strip.frosts.map((x) => (
              <g key={x}>
                <line x1={x} x2={x} y1={1.3 * rem} y2={base} class="k-cold k-dots" />
                <text x={x} y={0.9 * rem} class="t-cold mid">
                  frost
                </text>
              </g>
            ))}
            {strip.today !== null && (
              <g>
                <line x1={strip.today} x2={strip.today} y1={1.1 * rem} y2={base} class="k-today" />
                <text x={strip.today} y={0.9 * rem} class="t-ink mid k-halo">
                  today
                </text>
              </g>
            )}
            {strip.months
              .filter(({ month }) => month % 3 === 0)
              .map(({ month, x }) => (
                <text key={month} x={x + 2} y={base + 1.2 * rem}>
                  {MONTHS[month]?.slice(0, 3)}
                </text>
              ))}
          </svg>
        );
      }}
    </Measured>
  );
}

interface WeekListProps {
  readonly figures: YearFigures;
  readonly names: CropNames;
  /** Index of the week that is open. */
  readonly open: number | null;
  readonly onOpen: (index: number | null) => void;
  readonly weekProps: (week: CalendarWeek) => WeekProps & { readonly said: string };
}

export function WeekList({ figures, names, open, onOpen, weekProps }: WeekListProps) {
  const max = Math.max(500, ...figures.total.high);
  return (
    <ol class="weeks">
      {figures.now > 0 && <Gone figures={figures} names={names} />}
      {figures.weeks.slice(figures.now).map((week, i) => {
        const index = figures.now + i;
        return (
          <li key={week.week}>
            <details open={index === open} onToggle={(event) => toggled(event, index, open, onOpen)}>
              <summary>
                <span class="wk">{weekTitle(week.week, "short")}</span>
                <span class="wk-sum">{week.glut ? <b class="over">{amount(week.surplusGrams)} over</b> : amount(week.grams.likely)}</span>
                <span class="wk-words">{inShort(week, names)}</span>
                <Bar week={week} max={max} />
              </summary>
              {index === open && <WeekInList {...weekProps(week)} />}
            </details>
          </li>
        );
      })}
    </ol>
  );
}

function toggled(event: Event, index: number, open: number | null, onOpen: WeekListProps["onOpen"]): void {
  const isOpen = event.currentTarget instanceof HTMLDetailsElement && event.currentTarget.open;
  if (isOpen && index !== open) onOpen(index);
  if (!isOpen && index === open) onOpen(null);
}

function inShort(week: CalendarWeek, names: CropNames): string {
  if (week.grams.high < LEAST_G) return "nothing that has to be eaten";
  const leading = leadingCrops(week, names);
  return `${amountSpan(week.grams.low, week.grams.high)}${leading ? `: ${leading}` : ""}`;
}

/** Eaten solid, over hatched, pale to high; in shares of the largest week. */
function Bar({ week, max }: { readonly week: CalendarWeek; readonly max: number }) {
  const at = (grams: number): string => `${((100 * Math.min(grams, max)) / max).toFixed(1)}%`;
  const over = week.glut ? Math.min(week.surplusGrams, week.grams.likely) : 0;
  return (
    <svg class="wk-bar" width="100%" height="12" aria-hidden="true">
      <defs>
        <Hatch id={`bar-${week.week}`} />
      </defs>
      <line x1="0" x2="100%" y1="11.5" y2="11.5" class="k-rule" />
      <rect x="0" y="2" width={at(week.grams.high)} height="9" class="k-edge" />
      <rect x="0" y="2" width={at(week.grams.likely - over)} height="9" class="k-hill" />
      {over > 0 && (
        <>
          <rect x={at(week.grams.likely - over)} y="2" width={at(over)} height="9" class="k-over-bg" />
          <rect x={at(week.grams.likely - over)} y="2" width={at(over)} height="9" fill={`url(#bar-${week.week})`} />
        </>
      )}
    </svg>
  );
}

function Gone({ figures, names }: { readonly figures: YearFigures; readonly names: CropNames }) {
  const weeks = figures.weeks.slice(0, figures.now);
  const last = weeks[weeks.length - 1] as CalendarWeek;
  const grams = figures.total.picked.reduce((sum, picked) => sum + picked, 0);
  return (
    <li>
      <details>
        <summary>
          <span class="wk">{weeks.length === 1 ? `Week 1` : `Weeks 1–${weekNumber(last.week)}`}</span>
          <span class="wk-sum">{amount(grams)} picked</span>
          <span class="wk-words">gone by, {weekName(last.week)} the last of them</span>
        </summary>
        <table class="done">
          <caption class="vh">Picked so far this year</caption>
          <thead>
            <tr>
              <th scope="col">Week</th>
              <th scope="col">Picked</th>
              <th scope="col" class="num">
                Sum, kg
              </th>
            </tr>
          </thead>
          <tbody>
            {[...weeks]
              .reverse()
              .filter((week) => week.pickedGrams > 0)
              .map((week) => (
                <tr key={week.week}>
                  <th scope="row">
                    {weekNumber(week.week)} · {weekSpan(week.week, "short")}
                  </th>
                  <td>{pickedWords(week, names)}</td>
                  <td class="num">{weightCell(week.pickedGrams)}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </details>
    </li>
  );
}
