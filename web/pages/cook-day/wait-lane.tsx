/** How long a dish may stand: dotted from when it is ready to a stroke at the latest minute, a dot where the plan takes it up. */
import type { CookDay } from "#shared/contracts/cook-days.ts";
import { clockAt } from "./day-words.ts";
import type { Wait } from "./waits.ts";

interface WaitLaneProps {
  readonly day: CookDay;
  readonly rows: readonly (readonly { readonly wait: Wait }[])[];
  readonly endMin: number;
  readonly x: (minute: number) => number;
  readonly y: number;
  readonly rem: number;
}

/** Room for “B 17 by 12:56”. */
export const WAIT_LABEL_REM = 6.4;
const ROW_REM = 1.75;

export function WaitLane({ day, rows, endMin, x, y, rem }: WaitLaneProps) {
  return (
    <>
      {rows.map((waits, i) =>
        waits.map(({ wait }) => {
          const line = y + (1.55 + i * ROW_REM) * rem;
          const [from, to] = [x(wait.fromMin), x(Math.min(wait.toMin, endMin))];
          // near the right edge the words end at the stroke
          const late = from + WAIT_LABEL_REM * rem > x(endMin);
          const words = `${wait.number} by ${clockAt(day, wait.toMin)}`;
          return (
            <g key={wait.number}>
              <path d={`M${from} ${line}H${to}`} class="k-ink k-dots" />
              <path d={`M${to} ${line - 5}V${line + 5}`} class="k-ink" />
              <circle cx={x(wait.atMin)} cy={line} r={2.6} class="k-ink-fill" />
              {late ? (
                <text x={to} y={line - 0.45 * rem} class="t-ink k-halo end">
                  {wait.letter} {words}
                </text>
              ) : (
                <>
                  <text x={from} y={line - 0.4 * rem} class="t-fig k-halo">
                    {wait.letter}
                  </text>
                  <text x={from + 1.1 * rem} y={line - 0.45 * rem} class="t-ink k-halo">
                    {words}
                  </text>
                </>
              )}
            </g>
          );
        }),
      )}
    </>
  );
}
