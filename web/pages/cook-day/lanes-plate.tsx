/** The plate of a cook day: hands as solid blocks, the oven as a line that rises with its heat, burners as frames, the rest as brackets. */
import type { ComponentChildren } from "preact";
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import { degrees, length } from "../../format.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { clockAt } from "./day-words.ts";
import { lanesOf, ovenLine, tickEvery, type Lanes, type OvenRun, type Span } from "./lanes.ts";

interface PlateProps {
  readonly day: CookDay;
  readonly plan: Timetable;
}

export function LanesPlate({ day, plan }: PlateProps) {
  const lanes = lanesOf(day, plan);
  return (
    <section aria-label="Lanes">
      <div class="scroll" tabIndex={0} role="region" aria-label="Lanes; they scroll sideways on a phone">
        <Measured>{(room) => <Drawing day={day} plan={plan} lanes={lanes} room={room} />}</Measured>
      </div>
      <Key />
    </section>
  );
}

const HANDS_REM = 3.6;
const OVEN_REM = 4.8;
const BURNER_REM = 2.6;
const ALONE_REM = 1.75;

function Drawing({ day, plan, lanes, room }: PlateProps & { readonly lanes: Lanes; readonly room: Room }) {
  const { rem } = room;
  const width = Math.max(room.width, 46 * rem);
  const left = 7.5 * rem;
  const x = (minute: number): number => left + (minute / lanes.endMin) * (width - left - rem);
  const top = 1.75 * rem;
  let y = top + 0.4 * rem;
  const rows: ComponentChildren[] = [];
  const row = (name: string, sub: string, height: number, draw: (y: number) => ComponentChildren): void => {
    rows.push(<Row key={`${name}${y}`} name={name} sub={sub} y={y} height={height} width={width} rem={rem} content={draw(y)} />);
    y += height;
  };
  lanes.hands.forEach((spans, i) => row(lanes.hands.length > 1 ? `Cook ${i + 1}` : "Hands", `${length(spans.reduce((sum, s) => sum + s.toMin - s.fromMin, 0))} of ${length(lanes.endMin)}`, HANDS_REM * rem, (at) => <Hands spans={spans} x={x} y={at} rem={rem} />));
  lanes.ovens.forEach((runs, i) => row(lanes.ovens.length > 1 ? `Oven ${i + 1}` : "Oven", "", OVEN_REM * rem, (at) => <OvenLane runs={runs} preheatMin={day.kitchen.ovens[i]?.preheatMin ?? 0} endMin={lanes.endMin} x={x} y={at} rem={rem} />));
  lanes.burners.forEach((spans, i) => row(`Burner ${i + 1}`, "", BURNER_REM * rem, (at) => <BurnerLane spans={spans} x={x} y={at} rem={rem} />));
  if (lanes.alone.length > 0) row("By itself", "", (lanes.alone.length * ALONE_REM + 0.4) * rem, (at) => <AloneLane rows={lanes.alone} x={x} y={at} rem={rem} />);
  const every = tickEvery(lanes.endMin, width - left, 3.2 * rem);
  const ticks = Array.from({ length: Math.floor(lanes.endMin / every) + 1 }, (_, i) => i * every);
  const done = plan.endMin ?? lanes.endMin;
  return (
    <svg width={width} height={y + 4} viewBox={`0 0 ${width} ${y + 4}`} role="img" aria-label={`Lanes for hands, oven, burners and what goes by itself, from ${day.startsAt} to ${clockAt(day, done)}. The same steps stand in the list below.`}>
      <HeatPattern />
      {ticks.map((minute) => (
        <g key={minute}>
          <line x1={x(minute)} x2={x(minute)} y1={top} y2={y} class="k-rule" />
          <text x={x(minute)} y={1.1 * rem} class={`t-ink${minute === 0 ? "" : " mid"}`}>
            {done - minute < every / 2 && minute !== 0 ? "" : clockAt(day, minute)}
          </text>
        </g>
      ))}
      <line x1={0} x2={width} y1={top} y2={top} class="k-axis" />
      {rows}
      <line x1={x(done)} x2={x(done)} y1={top} y2={y} class="k-today" />
      <text x={x(done) + 0.5 * rem} y={1.1 * rem} class="t-ink end t-bold">
        done {clockAt(day, done)}
      </text>
    </svg>
  );
}

interface RowProps {
  readonly name: string;
  readonly sub: string;
  readonly y: number;
  readonly height: number;
  readonly width: number;
  readonly rem: number;
  readonly content: ComponentChildren;
}

function Row({ name, sub, y, height, width, rem, content }: RowProps) {
  return (
    <g>
      <text x={0} y={y + 1.5 * rem} class="t-name">
        {name}
      </text>
      {sub && (
        <text x={0} y={y + 2.7 * rem}>
          {sub}
        </text>
      )}
      {content}
      <line x1={0} x2={width} y1={y + height} y2={y + height} class="k-rule" />
    </g>
  );
}

interface LaneProps {
  readonly x: (minute: number) => number;
  readonly y: number;
  readonly rem: number;
}

/** Solid ink: dish letter and step number; the word where it has room. */
function Hands({ spans, x, y, rem }: LaneProps & { readonly spans: readonly Span[] }) {
  return (
    <>
      {spans.map((span) => {
        const width = x(span.toMin) - x(span.fromMin) - 1.5;
        const at = x(span.fromMin);
        const room = Math.floor((width - 0.7 * rem) / (0.46 * rem));
        return (
          <g key={span.number}>
            <rect x={at} y={y} width={Math.max(2, width)} height={3.1 * rem} class="k-ink-fill" />
            {width > 0.9 * rem && (
              <text x={at + 0.3 * rem} y={y + 1.25 * rem} class="t-fig t-on">
                {span.letter}
              </text>
            )}
            {width > 2.6 * rem && (
              <text x={at + width - 0.3 * rem} y={y + 1.2 * rem} class="t-on end">
                {span.number}
              </text>
            )}
            {room >= 5 && (
              <text x={at + 0.3 * rem} y={y + 2.5 * rem} class="t-on">
                {fitted(span.words, room)}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

/** Whole words only, as many as have room. */
function fitted(words: string, room: number): string {
  if (words.length <= room) return words;
  const cut = words.slice(0, room + 1).lastIndexOf(" ");
  return cut > 0 ? words.slice(0, cut) : words.split(" ")[0]?.length && (words.split(" ")[0] as string).length <= room ? (words.split(" ")[0] as string) : "";
}

function OvenLane({ runs, preheatMin, endMin, x, y, rem }: LaneProps & { readonly runs: readonly OvenRun[]; readonly preheatMin: number; readonly endMin: number }) {
  const ground = y + (OVEN_REM - 0.2) * rem;
  const height = (c: number): number => ground - ((c - 20) / 260) * (OVEN_REM - 1.4) * rem;
  return (
    <>
      {runs.map((run) => (
        <g key={run.fromMin}>
          <rect x={x(run.fromMin)} y={height(run.c)} width={x(run.toMin) - x(run.fromMin)} height={ground - height(run.c)} fill="url(#heat)" class="k-heat-lines" />
          <text x={(x(run.fromMin) + x(run.toMin)) / 2} y={height(run.c) - 0.35 * rem} class="t-ink mid">
            {degrees(run.c)}
          </text>
          <text x={x(run.fromMin) + 0.4 * rem} y={ground - 0.6 * rem} class="t-fig k-halo">
            {[...new Set(run.spans.map((span) => span.letter))].join(" ")}
          </text>
        </g>
      ))}
      <path d={`M${ovenLine(runs, preheatMin, endMin).map(([minute, c]) => `${x(minute).toFixed(1)} ${height(c).toFixed(1)}`).join("L")}`} class="k-ink" />
    </>
  );
}

function BurnerLane({ spans, x, y, rem }: LaneProps & { readonly spans: readonly Span[] }) {
  return (
    <>
      {spans.map((span) => {
        const width = x(span.toMin) - x(span.fromMin) - 1.5;
        return (
          <g key={span.number}>
            <rect x={x(span.fromMin)} y={y + 0.5 * rem} width={Math.max(2, width)} height={1.6 * rem} class="k-ink" />
            {width > 1.2 * rem && (
              <text x={x(span.fromMin) + 0.4 * rem} y={y + 1.6 * rem} class="t-fig">
                {span.letter}
              </text>
            )}
            {width > 6 * rem && (
              <text x={x(span.fromMin) + 1.6 * rem} y={y + 1.58 * rem} class="t-ink">
                {fitted(span.words, Math.floor((width - 2 * rem) / (0.46 * rem)))}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

function AloneLane({ rows, x, y, rem }: LaneProps & { readonly rows: readonly (readonly Span[])[] }) {
  return (
    <>
      {rows.map((spans, i) =>
        spans.map((span) => {
          const by = y + (1.55 + i * ALONE_REM) * rem;
          const width = x(span.toMin) - x(span.fromMin);
          return (
            <g key={span.number}>
              <path d={`M${x(span.fromMin)} ${by - 4}V${by + 4}M${x(span.fromMin)} ${by}H${x(span.toMin)}M${x(span.toMin)} ${by - 4}V${by + 4}`} class="k-ink" />
              <text x={x(span.fromMin) + 0.4 * rem} y={by - 0.4 * rem} class="t-fig k-halo">
                {span.letter}
              </text>
              {width > 5 * rem && (
                <text x={x(span.fromMin) + 1.5 * rem} y={by - 0.4 * rem} class="t-ink k-halo">
                  {fitted(span.words, Math.floor((width - 2 * rem) / (0.46 * rem)))}
                </text>
              )}
            </g>
          );
        }),
      )}
    </>
  );
}

function HeatPattern() {
  return (
    <defs>
      <pattern id="heat" width={4} height={4} patternUnits="userSpaceOnUse">
        <line x1={0.5} y1={0} x2={0.5} y2={4} class="k-axis" />
      </pattern>
    </defs>
  );
}

function Key() {
  return (
    <ul class="key">
      <li>
        <svg width={22} height={12} aria-hidden="true">
          <rect width={22} height={12} class="k-ink-fill" />
        </svg>
        hands
      </li>
      <li>
        <svg width={22} height={12} aria-hidden="true">
          <rect x={0.7} y={0.7} width={20.6} height={10.6} class="k-ink" />
        </svg>
        on a burner
      </li>
      <li>
        <svg width={22} height={12} aria-hidden="true">
          <path d="M1 11L6 2H16L21 11" class="k-ink" />
        </svg>
        heat of the oven
      </li>
      <li>
        <svg width={22} height={12} aria-hidden="true">
          <path d="M1 3V9M1 6H21M21 3V9" class="k-ink" />
        </svg>
        by itself
      </li>
    </ul>
  );
}
