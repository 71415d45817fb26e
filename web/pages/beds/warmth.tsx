/** Early or late season? The warmth a sowing has had, against what is usual by the same day. */
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { MONTHS, shortDay, whole } from "../../format.ts";
import { bandPath, linePath } from "../../parts/hills.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { layOutWarmth } from "./warmth-plate.ts";
import { aheadWords, degreeDays, warmthSentence, type Warmth } from "./warmth-words.ts";

export function WarmthSoFar({ warmth, today }: { readonly warmth: Warmth; readonly today: LocalDate }) {
  return (
    <section class="sec" aria-labelledby="warmth-h">
      <h2 id="warmth-h">{aheadWords(warmth)}</h2>
      <p class="say" id="warmth-words">
        {warmthSentence(warmth, today)}
      </p>
      <Measured class="warmth-plate">{(room) => <Plate warmth={warmth} today={today} room={room} />}</Measured>
      <ul class="key">
        <li>
          <svg width="26" height="12" aria-hidden="true">
            <path d="M1 11L25 2" class="k-season" />
          </svg>
          this season
        </li>
        <li>
          <svg width="26" height="12" aria-hidden="true">
            <path d="M0 12L26 4V0L0 8Z" class="k-edge" />
          </svg>
          usual, eight years of ten
        </li>
      </ul>
      <WarmthTable warmth={warmth} today={today} />
    </section>
  );
}

function Plate({ warmth, today, room }: { readonly warmth: Warmth; readonly today: LocalDate; readonly room: Room }) {
  const { rem } = room;
  const plate = layOutWarmth(warmth, room);
  const needs = plate.y(warmth.needsCd);
  const at = plate.x(today);
  return (
    <svg width={plate.width} height={plate.height} viewBox={`0 0 ${plate.width} ${plate.height}`} role="img" aria-labelledby="warmth-words">
      {plate.scale.map(({ cd, words }, i) => (
        <g key={words}>
          <line x1={0} x2={plate.width} y1={plate.y(cd)} y2={plate.y(cd)} class="k-rule" />
          <text x={0} y={plate.y(cd) - 4} class="k-halo">
            {words}
            {i === plate.scale.length - 1 ? " degree-days" : ""}
          </text>
        </g>
      ))}
      {plate.months.map(({ first, x, labelled }) => (
        <g key={first}>
          <line x1={x} x2={x} y1={plate.base} y2={plate.base + 5} class="k-axis" />
          {labelled && (
            <text x={x + 3} y={plate.base + 1.3 * rem}>
              {(MONTHS[Number(first.slice(5, 7)) - 1] ?? "").slice(0, 3)}
            </text>
          )}
        </g>
      ))}
      <path d={bandPath(plate.low, plate.high)} class="k-edge" />
      <path d={linePath(plate.likely)} class="k-usual" />
      <line x1={0} x2={plate.width} y1={needs} y2={needs} class="k-ink k-dash" />
      <text x={plate.width} y={needs - 5} class="t-ink k-halo end">
        first pick
      </text>
      <line x1={at} x2={at} y1={1.2 * rem} y2={plate.base} class="k-today" />
      <text x={at} y={0.9 * rem} class={`t-ink t-bold k-halo ${at < 2 * rem ? "" : at > plate.width - 2 * rem ? "end" : "mid"}`}>
        today
      </text>
      <path d={linePath(plate.own)} class="k-season" />
      <line x1={0} x2={plate.width} y1={plate.base} y2={plate.base} class="k-axis" />
    </svg>
  );
}

function WarmthTable({ warmth, today }: { readonly warmth: Warmth; readonly today: LocalDate }) {
  const cell = (cd: number): string => whole(degreeDays(cd));
  return (
    <details class="by-week">
      <summary class="word">The warmth as a table</summary>
      <div class="scroll" tabIndex={0} role="region" aria-label="The warmth as a table">
        <table>
          <thead>
            <tr>
              <th scope="col">By the morning of</th>
              <th scope="col" class="num">
                This season
              </th>
              <th scope="col" class="num">
                Usual
              </th>
              <th scope="col" class="num">
                Low–high
              </th>
            </tr>
          </thead>
          <tbody>
            {warmth.points.map(({ on, gainedCd, usualCd }) => (
              <tr key={on}>
                <th scope="row">{shortDay(on, today)}</th>
                <td class="num">{gainedCd === null ? "" : cell(gainedCd)}</td>
                <td class="num">{cell(usualCd.likely)}</td>
                <td class="num quiet">
                  {cell(usualCd.low)}–{cell(usualCd.high)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
