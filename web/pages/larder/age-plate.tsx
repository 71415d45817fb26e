/** Age lines: put in, today, best until. What has under thirty days left is thick and beet, with the words. */
import type { LarderLot } from "#shared/contracts/lots.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { monthYear, shortDay } from "../../format.ts";
import { Measured } from "../../parts/measured.tsx";
import { layOutAges } from "./age-lines.ts";
import { lotName } from "./lot-words.ts";

const ROW_REM = 2.25;
const HEAD_REM = 1.9;
const LEFT_REM = 16;
const RIGHT_REM = 11;

export function AgePlate({ lots, today }: { readonly lots: readonly LarderLot[]; readonly today: LocalDate }) {
  const dated = lots.filter(({ bestUntil }) => bestUntil !== null);
  if (dated.length === 0) return null;
  return (
    <div class="laptop">
      <Measured class="ages">
        {({ width, rem }) => {
          const plate = layOutAges(dated, today, LEFT_REM * rem, width - RIGHT_REM * rem, 4.5 * rem);
          const bottom = (HEAD_REM + dated.length * ROW_REM) * rem;
          const room = Math.floor((LEFT_REM - 1) / 0.52);
          return (
            <svg width={width} height={bottom + 4} viewBox={`0 0 ${width} ${bottom + 4}`} role="img" aria-label="Lots from the day they were put in to the day they are best until; the same in the list below">
              {plate.months.map(({ first, x, labelled }) => (
                <g key={first}>
                  <line x1={x} x2={x} y1={(HEAD_REM - 0.4) * rem} y2={bottom} class="k-rule" />
                  {labelled && (
                    <text x={x + 4} y={1.1 * rem}>
                      {monthYear(first)}
                    </text>
                  )}
                </g>
              ))}
              {plate.lines.map(({ id, from, until, urgency }, i) => {
                const lot = dated[i];
                const y = (HEAD_REM + i * ROW_REM + 1.35) * rem;
                const soon = urgency === "use now" || urgency === "throw away";
                if (!lot) return null;
                return (
                  <g key={id}>
                    <line x1={0} x2={width} y1={y + 0.9 * rem} y2={y + 0.9 * rem} class="k-rule" />
                    <text x={0} y={y + 0.3 * rem} class="t-name">
                      {shortened(lotName(lot, today), room)}
                    </text>
                    <line x1={from} x2={Math.max(from, Math.min(plate.today, until))} y1={y} y2={y} class="k-gone" />
                    {until > plate.today && <line x1={plate.today} x2={until} y1={y} y2={y} class={soon ? "k-soon" : "k-left"} />}
                    <line x1={until} x2={until} y1={y - 6} y2={y + 6} class={soon ? "k-soon" : "k-range"} />
                    <circle cx={from} cy={y} r={3} class="k-ink-fill" />
                    <text x={width} y={y + 0.3 * rem} class={`end${soon ? " t-over" : ""}`}>
                      {urgency === "throw away" ? "throw away" : `${(lot.bestUntil ?? today) < today ? "best was to " : soon ? "use now, by " : "best to "}${shortDay(lot.bestUntil ?? today, today)}`}
                    </text>
                  </g>
                );
              })}
              <line x1={plate.today} x2={plate.today} y1={(HEAD_REM - 0.2) * rem} y2={bottom} class="k-today" />
              <text x={plate.today} y={1.1 * rem} class="mid t-ink t-bold k-halo">
                today
              </text>
            </svg>
          );
        }}
      </Measured>
    </div>
  );
}

function shortened(name: string, room: number): string {
  return name.length <= room ? name : `${name.slice(0, room - 1).trimEnd()}…`;
}
