/** What is worth picking: one row a sowing, all lines on one scale; the whole row opens the scale sheet. */
import type { Today } from "#shared/contracts/today.ts";
import { amount, amountSpan } from "../../format.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { niceMax, since } from "./pick-words.ts";

type Pick = Today["pick"][number];

export function PickRows({ picks, onOpen }: { readonly picks: readonly Pick[]; readonly onOpen: (sowingId: string) => void }) {
  if (picks.length === 0) return null;
  const max = niceMax(Math.max(...picks.map((pick) => pick.grams.high)));
  return (
    <section class="sec" aria-labelledby="pick-h">
      <h2 id="pick-h">Worth picking today</h2>
      <ul class="picks">
        {picks.map((pick) => (
          <li key={pick.sowingId}>
            <button type="button" class="pick" onClick={() => onOpen(pick.sowingId)}>
              <span class="pick-name">{pick.name}</span>
              <span class="pick-amt">{amount(pick.grams.likely)}</span>
              <span class="pick-sub">
                {pick.bedName}
                {since(pick.daysSince)}
              </span>
              <span class="pick-sub num">{amountSpan(pick.grams.low, pick.grams.high)}</span>
              <Measured class="pick-line">{(room) => <PickLine pick={pick} max={max} room={room} />}</Measured>
            </button>
          </li>
        ))}
      </ul>
      <Measured>{(room) => <Scale max={max} room={room} />}</Measured>
      <p class="say">Dot: most likely. Line: low to high, in eight seasons of ten.</p>
    </section>
  );
}

const EDGE = 6;
const x = (grams: number, max: number, width: number): number => EDGE + (Math.min(grams, max) / max) * (width - 2 * EDGE);

function PickLine({ pick, max, room: { width } }: { readonly pick: Pick; readonly max: number; readonly room: Room }) {
  return (
    <svg width={width} height={18} viewBox={`0 0 ${width} 18`} aria-hidden="true">
      <line x1={EDGE} x2={width - EDGE} y1={17.5} y2={17.5} class="k-rule" />
      {[0, 1, 2, 3, 4].map((i) => (
        <line key={i} x1={x((i * max) / 4, max, width)} x2={x((i * max) / 4, max, width)} y1={14} y2={17.5} class="k-axis" />
      ))}
      <line x1={x(pick.grams.low, max, width)} x2={x(pick.grams.high, max, width)} y1={8} y2={8} class="k-range" />
      <circle cx={x(pick.grams.likely, max, width)} cy={8} r={5.5} class="k-dot" />
    </svg>
  );
}

function Scale({ max, room: { width, rem } }: { readonly max: number; readonly room: Room }) {
  const place = (i: number): string => (i === 0 ? "" : i === 4 ? "end" : "mid");
  return (
    <svg width={width} height={1.25 * rem} viewBox={`0 0 ${width} ${1.25 * rem}`} aria-hidden="true">
      {[0, 1, 2, 3, 4].map((i) => (
        <text key={i} x={i === 0 ? 0 : i === 4 ? width : x((i * max) / 4, max, width)} y={rem} class={place(i)}>
          {i === 0 ? "0" : amount((i * max) / 4)}
        </text>
      ))}
    </svg>
  );
}
