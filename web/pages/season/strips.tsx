/** The season's plate: what ripens and becomes of it, hands, and the freezer, week by week on one axis. Above each its sentence. */
import type { ComponentChildren } from "preact";
import { MONTHS, tableUnit } from "../../format.ts";
import { Hatch } from "../../parts/hatch.tsx";
import { Measured } from "../../parts/measured.tsx";
import { roundSteps } from "../../parts/round-steps.ts";
import { barsOf, levelField, levelPath, weekAxis, type Bar, type WeekAxis } from "./week-axis.ts";
import { freezerWords, handsWords, putUpGrams, ripensWords, type Plan } from "./season-words.ts";

/** Room at the right for the figures of the scale; the same in every strip, so that the weeks stand below one another. */
const SIDE_REM = 3.25;

/** Round figures up the side, in a unit that `each` base units make. */
const levelsOf = (most: number, wanted: number, each: number, unit: string): StripProps["levels"] => roundSteps(most / each, wanted).map((step) => ({ value: step * each, words: `${step}\u00a0${unit}` }));

export function SeasonPlate({ plan }: { readonly plan: Plan }) {
  const { weeks, freezer } = plan;
  const starts = weeks.map((week) => week.starts);
  const tallest = Math.max(1000, ...weeks.map(({ pickedGrams }) => pickedGrams));
  const hours = Math.max(60, ...weeks.flatMap(({ handsOnMin, handsOnMostMin }) => [handsOnMin, handsOnMostMin]));
  const litres = Math.max(10, ...freezer.weeks.flatMap(({ usedLitres, capacityLitres }) => [usedLitres, capacityLitres ?? 0]));
  const eaten = weeks.map(({ freshGrams }) => ({ from: 0, to: freshGrams }));
  const up = weeks.map((week) => ({ from: week.freshGrams, to: week.freshGrams + putUpGrams(week) }));
  const lost = weeks.map((week) => ({ from: week.pickedGrams - week.lostGrams, to: week.pickedGrams }));
  return (
    <figure class="season-plate">
      <Strip id="ripens" title="What ripens" words={ripensWords(weeks)} starts={starts} rem={8} most={tallest} levels={levelsOf(tallest, 3, tableUnit().grams, tableUnit().word)}>
        {(axis, height) => (
          <>
            <Bars bars={barsOf(eaten, tallest, height, axis)} mark="k-edge" />
            <Bars bars={barsOf(up, tallest, height, axis)} mark="k-hill" />
            <Bars bars={barsOf(lost, tallest, height, axis)} mark="k-over-bg" />
            <Bars bars={barsOf(lost, tallest, height, axis)} fill="url(#season-lost)" />
          </>
        )}
      </Strip>
      <ul class="key">
        <KeyMark mark="k-edge">eaten fresh</KeyMark>
        <KeyMark mark="k-hill">put up, or keeps</KeyMark>
        <KeyMark mark="k-over-bg" fill="url(#season-lost)">
          finds no use
        </KeyMark>
      </ul>
      <Strip id="hands" title="Hands" words={handsWords(weeks)} starts={starts} rem={4} most={hours} levels={levelsOf(hours, 2, 60, "h")}>
        {(axis, height) => (
          <>
            <Bars bars={barsOf(weeks.map(({ handsOnMin }) => ({ from: 0, to: handsOnMin })), hours, height, axis)} mark="k-ink-fill" />
            <path d={levelPath(weeks.map(({ handsOnMostMin }) => handsOnMostMin), hours, height, axis)} class="k-ink k-dash k-nofill" />
          </>
        )}
      </Strip>
      <Strip id="freezer" title="Freezer" words={freezerWords(freezer)} starts={starts} rem={5} most={litres} levels={levelsOf(litres, 2, 1, "l")}>
        {(axis, height) => (
          <>
            <path d={levelField(freezer.weeks.map(({ usedLitres }) => usedLitres), litres, height, axis)} class="k-cold-fill" />
            <path d={levelPath(freezer.weeks.map(({ capacityLitres }) => capacityLitres), litres, height, axis)} class="k-cold k-nofill k-limit" />
          </>
        )}
      </Strip>
      <ul class="key">
        <li>
          <svg width={22} height={12} aria-hidden="true">
            <line x1={0} x2={22} y1={6} y2={6} class="k-ink k-dash" />
          </svg>
          hours there are
        </li>
        <li>
          <svg width={22} height={12} aria-hidden="true">
            <line x1={0} x2={22} y1={6} y2={6} class="k-cold k-limit" />
          </svg>
          litres the freezer has
        </li>
      </ul>
    </figure>
  );
}

interface StripProps {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly starts: readonly string[];
  /** Height in rem. */
  readonly rem: number;
  /** Figures at the side, each on a hairline; `most` reaches the top. */
  readonly most: number;
  readonly levels: readonly { readonly value: number; readonly words: string }[];
  readonly children: (axis: WeekAxis, height: number) => ComponentChildren;
}

/** One strip on the weeks; its words stand above and name it. */
export function Strip({ id, title, words, starts, rem: tall, most, levels, children }: StripProps) {
  return (
    <div class="strip">
      <p id={`${id}-words`}>
        <b class="what">{title}</b> {words}
      </p>
      <Measured>
        {({ width, rem }) => {
          const axis = weekAxis(starts, width - SIDE_REM * rem, rem);
          const height = tall * rem;
          return (
            <svg width={width} height={height + 1.6 * rem} viewBox={`0 0 ${width} ${height + 1.6 * rem}`} role="img" aria-labelledby={`${id}-words`}>
              <defs>
                <Hatch id="season-lost" />
              </defs>
              {axis.months.map(({ first, x, labelled }) => (
                <g key={first}>
                  <line x1={x} x2={x} y1={0} y2={height + 0.4 * rem} class="k-rule" />
                  {labelled && (
                    <text x={x + 3} y={height + 1.3 * rem}>
                      {(MONTHS[Number(first.slice(5, 7)) - 1] ?? "").slice(0, 3)}
                    </text>
                  )}
                </g>
              ))}
              {levels.map(({ value, words: figure }) => {
                const y = height - (value / most) * height;
                return (
                  <g key={value}>
                    <line x1={0} x2={axis.width} y1={y} y2={y} class="k-rule" />
                    <text x={width} y={y + 0.3 * rem} class="end">
                      {figure}
                    </text>
                  </g>
                );
              })}
              {children(axis, height)}
              <line x1={0} x2={axis.width} y1={height} y2={height} class="k-axis" />
            </svg>
          );
        }}
      </Measured>
    </div>
  );
}

function Bars({ bars, mark, fill }: { readonly bars: readonly Bar[]; readonly mark?: string; readonly fill?: string }) {
  return (
    <>
      {bars.map(({ x, y, width, height }) => (
        <rect key={x} x={x} y={y} width={width} height={height} class={mark} fill={fill} />
      ))}
    </>
  );
}

function KeyMark({ mark, fill, children }: { readonly mark: string; readonly fill?: string; readonly children: ComponentChildren }) {
  return (
    <li>
      <svg width={22} height={12} aria-hidden="true">
        <rect x={0.5} y={0.5} width={21} height={11} class={mark} />
        {fill && <rect x={0.5} y={0.5} width={21} height={11} fill={fill} />}
      </svg>
      {children}
    </li>
  );
}
