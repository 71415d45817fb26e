/** How each kind of lane is drawn. Minutes come in, `x` makes pixels of them; a word stands only where it has room. */
import { ovenHeat } from "../../parts/heat.ts";
import { fitted, ovenLine, type HandsLane as Lane, type OvenRun, type Span } from "./lanes.ts";

interface LaneProps {
  readonly x: (minute: number) => number;
  /** Top of the lane. */
  readonly y: number;
  readonly rem: number;
}

/** Width of a letter at the size of notes, in rem: the widest of the common faces. */
const LETTER_REM = 0.46;
const roomFor = (width: number, rem: number): number => Math.floor(width / (LETTER_REM * rem));
const numbersOf = ({ first, last }: Span): string => (first === last ? String(first) : `${first}–${last}`);

export function HandsLane({ lane, endMin, x, y, rem }: LaneProps & { readonly lane: Lane; readonly endMin: number }) {
  return (
    <>
      {lane.away.map((away) => {
        const [from, to] = [x(away.fromMin), x(Math.min(away.toMin, endMin))];
        if (to <= from) return null;
        return (
          <g key={`away ${away.fromMin}`}>
            <rect x={from + 1} y={y} width={Math.max(2, to - from - 3)} height={3.1 * rem} class="k-plan" />
            <text x={from + 0.5 * rem} y={y + 1.9 * rem}>
              {fitted(away.why || "away", roomFor(to - from - rem, rem)) || fitted("away", roomFor(to - from - rem, rem))}
            </text>
          </g>
        );
      })}
      {lane.spans.map((span) => (span.parts.length > 1 ? <Loads key={span.first} span={span} x={x} y={y} rem={rem} /> : <Block key={span.first} span={span} x={x} y={y} rem={rem} />))}
    </>
  );
}

/** Solid ink: dish letter and number of the step; the word where it has room. */
function Block({ span, x, y, rem }: LaneProps & { readonly span: Span }) {
  const at = x(span.fromMin);
  const width = Math.max(2, x(span.toMin) - at - 1.5);
  const words = fitted(span.words, roomFor(width - 0.6 * rem, rem));
  return (
    <g data-step={span.first}>
      <rect x={at} y={y} width={width} height={3.1 * rem} class="k-ink-fill" />
      {width > 2.6 * rem ? (
        <>
          <text x={at + 0.3 * rem} y={y + 1.25 * rem} class="t-fig t-on">
            {span.letter}
          </text>
          <text x={at + width - 0.3 * rem} y={y + 1.2 * rem} class="t-on end">
            {numbersOf(span)}
          </text>
        </>
      ) : (
        width > 0.95 * rem && (
          <text x={at + width / 2} y={y + 1.25 * rem} class="t-fig t-on mid">
            {span.letter}
          </text>
        )
      )}
      {words && (
        <text x={at + 0.3 * rem} y={y + 2.5 * rem} class="t-on">
          {words}
        </text>
      )}
    </g>
  );
}

/** One step after the other in several loads: low blocks under one label, since none of them has room for its own. */
function Loads({ span, x, y, rem }: LaneProps & { readonly span: Span }) {
  const [from, to] = [x(span.fromMin), x(span.toMin) - 1.5];
  const low = 1.5 * rem;
  const figures = numbersOf(span);
  const hasFigures = to - from > (1.2 + figures.length * LETTER_REM) * rem;
  return (
    <g data-step={span.first}>
      {span.parts.map((part) => (
        <rect key={part.fromMin} x={x(part.fromMin)} y={y + low} width={Math.max(2, x(part.toMin) - x(part.fromMin) - 1)} height={3.1 * rem - low} class="k-ink-fill" />
      ))}
      <line x1={from} x2={to} y1={y + low - 3} y2={y + low - 3} class="k-ink" />
      {to - from > 0.8 * rem && (
        <text x={from} y={y + 1 * rem} class="t-fig">
          {span.letter}
        </text>
      )}
      {hasFigures && (
        <text x={from + 1 * rem} y={y + 1 * rem} class="t-ink">
          {figures}
        </text>
      )}
    </g>
  );
}

const OVEN_REM = 4.8;
const COLD_C = 20;
/** The line of an oven has room for so many degrees above a cold one. */
const TOP_C = 260;

export function OvenLane({ runs, heat, preheatMin, endMin, x, y, rem }: LaneProps & { readonly runs: readonly OvenRun[]; readonly heat: string; readonly preheatMin: number; readonly endMin: number }) {
  const ground = y + (OVEN_REM - 0.2) * rem;
  const height = (c: number): number => ground - (Math.min(c - COLD_C, TOP_C) / TOP_C) * (OVEN_REM - 1.4) * rem;
  return (
    <>
      {runs.map((run) => (
        <g key={run.fromMin}>
          <rect x={x(run.fromMin)} y={height(run.c)} width={x(run.toMin) - x(run.fromMin)} height={ground - height(run.c)} fill={`url(#${heat})`} />
          <text x={(x(run.fromMin) + x(run.toMin)) / 2} y={height(run.c) - 0.35 * rem} class="t-ink mid">
            {ovenHeat(run.c)}
          </text>
          <text x={x(run.fromMin) + 0.5 * rem} y={ground - 0.6 * rem} class="t-fig k-halo">
            {run.letters.join(" ")}
          </text>
        </g>
      ))}
      <path d={`M${ovenLine(runs, preheatMin, endMin).map(([minute, c]) => `${x(minute).toFixed(1)} ${height(c).toFixed(1)}`).join("L")}`} class="k-ink" />
    </>
  );
}

export function HeatPattern({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={id} width={4} height={4} patternUnits="userSpaceOnUse">
        <line x1={0.5} y1={0} x2={0.5} y2={4} class="k-axis" />
      </pattern>
    </defs>
  );
}

export function BurnerLane({ spans, x, y, rem }: LaneProps & { readonly spans: readonly Span[] }) {
  return (
    <>
      {spans.map((span) => {
        const at = x(span.fromMin);
        const width = x(span.toMin) - at - 1.5;
        return (
          <g key={span.first}>
            {span.parts.map((part) => (
              <rect key={part.fromMin} x={x(part.fromMin)} y={y + 0.5 * rem} width={Math.max(2, x(part.toMin) - x(part.fromMin) - 1.5)} height={1.6 * rem} class="k-ink" />
            ))}
            {width > 1.2 * rem && (
              <text x={at + 0.4 * rem} y={y + 1.6 * rem} class="t-fig k-halo">
                {span.letter}
              </text>
            )}
            {width > 5 * rem && span.parts.length === 1 && (
              <text x={at + 1.6 * rem} y={y + 1.58 * rem} class="t-ink">
                {fitted(span.words, roomFor(width - 2 * rem, rem))}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

const ALONE_REM = 1.75;

export function AloneLane({ rows, x, y, rem }: LaneProps & { readonly rows: readonly (readonly Span[])[] }) {
  return (
    <>
      {rows.map((spans, i) =>
        spans.map((span, k) => {
          const line = y + (1.55 + i * ALONE_REM) * rem;
          const [from, to] = [x(span.fromMin), x(span.toMin)];
          const next = spans[k + 1];
          const room = (next ? x(next.fromMin) - from : x(span.toMin) - from) - 0.4 * rem;
          return (
            <g key={`${span.first} ${span.fromMin}`}>
              <path d={`M${from} ${line - 4}V${line + 4}M${from} ${line}H${to}M${to} ${line - 4}V${line + 4}`} class="k-ink" />
              {room > 0.9 * rem && (
                <text x={from + 0.3 * rem} y={line - 0.4 * rem} class="t-fig k-halo">
                  {span.letter}
                </text>
              )}
              {room > 4 * rem && (
                <text x={from + 1.4 * rem} y={line - 0.4 * rem} class="t-ink k-halo">
                  {fitted(span.words, roomFor(room - 1.6 * rem, rem))}
                </text>
              )}
            </g>
          );
        }),
      )}
    </>
  );
}
