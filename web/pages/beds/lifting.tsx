/** What waits for the grower: from when it is ready, when it is at its best, by when it must be out of the ground. */
import type { DateBand } from "#shared/contracts/common.ts";
import { addDays, daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { MONTHS } from "../../format.ts";
import { monthsOn } from "../../parts/date-dots.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { liftSentence, type Lift } from "./lifting-words.ts";

export function Lifting({ lift, today }: { readonly lift: Lift; readonly today: LocalDate }) {
  return (
    <section class="sec" aria-labelledby="lift-h">
      <h2 id="lift-h">When to lift</h2>
      <p class="say" id="lift-words">
        {liftSentence(lift, today)}
      </p>
      <Measured class="lift-plate">{(room) => <Plate lift={lift} today={today} room={room} />}</Measured>
    </section>
  );
}

const EDGE = 8;

function Plate({ lift, today, room: { width, rem } }: { readonly lift: Lift; readonly today: LocalDate; readonly room: Room }) {
  const { ready, bestFrom, bestUntil, outBy } = lift;
  const from = addDays([ready.low, today].sort()[0] as LocalDate, -7);
  const days = daysBetween(from, [outBy.high, today].sort()[1] as LocalDate) + 14;
  const x = (date: LocalDate): number => EDGE + (daysBetween(from, date) / days) * (width - 2 * EDGE);
  const [line, axis] = [3.2 * rem, 6.4 * rem];
  const now = x(today);
  return (
    <svg width={width} height={axis + 1.7 * rem} viewBox={`0 0 ${width} ${axis + 1.7 * rem}`} role="img" aria-labelledby="lift-words">
      {monthsOn(from, days, x, width - 3 * rem, 2.6 * rem).map(({ first, x: at, labelled }) => (
        <g key={first}>
          <line x1={at} x2={at} y1={1.4 * rem} y2={axis + 5} class="k-rule" />
          {labelled && (
            <text x={at + 3} y={axis + 1.3 * rem}>
              {(MONTHS[Number(first.slice(5, 7)) - 1] ?? "").slice(0, 3)}
            </text>
          )}
        </g>
      ))}
      <line x1={0} x2={width} y1={axis} y2={axis} class="k-axis" />
      <line x1={now} x2={now} y1={1.2 * rem} y2={axis} class="k-today" />
      <text x={now} y={0.9 * rem} class={`t-ink t-bold k-halo ${now < 2 * rem ? "" : now > width - 2 * rem ? "end" : "mid"}`}>
        today
      </text>
      <line x1={x(ready.likely)} x2={x(outBy.likely)} y1={line} y2={line} class="k-ink" />
      <rect x={x(bestFrom.likely)} y={line - 0.45 * rem} width={Math.max(3, x(bestUntil.likely) - x(bestFrom.likely))} height={0.9 * rem} class="k-hill" />
      <text x={Math.min(x(bestFrom.likely), width - 5 * rem)} y={line - 0.75 * rem} class="t-ink k-halo">
        at its best
      </text>
      <Bracket band={ready} y={line + 1.1 * rem} x={x} rem={rem} width={width} word="ready" />
      <Bracket band={outBy} y={line + 2.3 * rem} x={x} rem={rem} width={width} word="out by" />
    </svg>
  );
}

interface BracketProps {
  readonly band: DateBand;
  readonly y: number;
  readonly x: (date: LocalDate) => number;
  readonly rem: number;
  readonly width: number;
  readonly word: string;
}

/** Earliest, most and latest likely day. */
function Bracket({ band, y, x, rem, width, word }: BracketProps) {
  const [a, at, b] = [x(band.low), x(band.likely), x(band.high)];
  const right = b + 3.5 * rem < width;
  return (
    <g>
      <path d={`M${a} ${y - 4}V${y + 4}M${a} ${y}H${b}M${b} ${y - 4}V${y + 4}`} class="k-range k-nofill" />
      <path d={`M${at - 5} ${y}L${at} ${y - 5}L${at + 5} ${y}L${at} ${y + 5}Z`} class="k-hill" />
      <text x={right ? b + 0.5 * rem : a - 0.5 * rem} y={y + 0.28 * rem} class={`k-halo${right ? "" : " end"}`}>
        {word}
      </text>
    </g>
  );
}
