/** How long it keeps in each place: a bar for the best of it, a stroke where it is no longer safe. The same stands in words below. */
import type { KeepingAnswer } from "#shared/contracts/keeping.ts";
import { capital } from "../../format.ts";
import { Measured } from "../../parts/measured.tsx";
import { written } from "../../parts/written.ts";
import { layOutKeeps } from "./keeps-bars.ts";

const ROW_REM = 2.5;
const LEFT_REM = 6;
const MARK_REM = 5.5;

export function KeepsPlate({ keeps }: { readonly keeps: KeepingAnswer["keeps"] }) {
  return (
    <section class="sec" aria-labelledby="keeps-h">
      <h2 id="keeps-h">How long it keeps</h2>
      <Measured class="keeps-plate">
        {({ width, rem }) => {
          const head = 1.75 * rem;
          const { bars, marks } = layOutKeeps(keeps, LEFT_REM * rem, width - rem, MARK_REM * rem);
          const height = head + bars.length * ROW_REM * rem;
          return (
            <svg width={width} height={height + 2} viewBox={`0 0 ${width} ${height + 2}`} role="img" aria-label="How long it keeps, by place; the same stands in the list below">
              {marks.map(({ x, words }) => (
                <g key={words}>
                  <line x1={x} x2={x} y1={head - 0.3 * rem} y2={height} class="k-rule" />
                  <text x={x} y={1.1 * rem} class="mid">
                    {words}
                  </text>
                </g>
              ))}
              {bars.map(({ place, bestLow, bestHigh, safe }, i) => {
                const y = head + i * ROW_REM * rem;
                const [top, thick] = [y + 0.7 * rem, 0.9 * rem];
                return (
                  <g key={`${place}${i}`}>
                    <text x={0} y={y + 1.5 * rem} class="t-name">
                      {capital(place)}
                    </text>
                    {bestHigh !== null && <rect x={LEFT_REM * rem} y={top} width={Math.max(2, bestHigh - LEFT_REM * rem)} height={thick} class="k-edge" />}
                    {bestLow !== null && <rect x={LEFT_REM * rem} y={top} width={Math.max(2, bestLow - LEFT_REM * rem)} height={thick} class="k-hill" />}
                    {safe !== null && <line x1={safe} x2={safe} y1={top - 0.35 * rem} y2={top + thick + 0.35 * rem} class="k-safe" />}
                    <line x1={0} x2={width} y1={y + ROW_REM * rem} y2={y + ROW_REM * rem} class="k-rule" />
                  </g>
                );
              })}
            </svg>
          );
        }}
      </Measured>
      <ul class="key">
        <li>
          <svg width={22} height={12} aria-hidden="true">
            <rect width={22} height={12} class="k-edge" />
            <rect width={13} height={12} class="k-hill" />
          </svg>
          at its best, shortest and longest
        </li>
        {keeps.some(({ safe }) => safe !== null) && (
          <li>
            <svg width={22} height={12} aria-hidden="true">
              <line x1={11} x2={11} y1={0} y2={12} class="k-safe" />
            </svg>
            safe until here, then throw it away
          </li>
        )}
      </ul>
      <ul class="rows keeping-rows">
        {keeps.map(({ place, text, source }) => (
          <li key={`${place}${text}`}>
            <p>{written(text)}</p>
            <p class="say">{source.text}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
