/** The picture of past forecasts. The sentence above it and the list below it say the same. */
import { Measured, type Room } from "../../parts/measured.tsx";
import { rowName, type TrackRow } from "./record-words.ts";
import { layOutSpans } from "./spans-plate.ts";

export function Spans({ rows, wordsId }: { readonly rows: readonly TrackRow[]; readonly wordsId: string }) {
  return (
    <figure class="season" aria-label="Past forecasts and what came">
      <Measured class="spans-plate">{(room) => <Plate rows={rows} room={room} wordsId={wordsId} />}</Measured>
      <ul class="key">
        <li>
          <svg width="26" height="12" aria-hidden="true">
            <rect x="0" y="3" width="26" height="6" class="k-edge" />
            <line x1="13" x2="13" y1="1" y2="11" class="k-axis" />
          </svg>
          forecast on the day of sowing, likely day in the middle
        </li>
        <li>
          <svg width="12" height="12" aria-hidden="true">
            <circle cx="6" cy="6" r="4.5" class="k-ink-fill" />
          </svg>
          came inside
        </li>
        <li>
          <svg width="12" height="12" aria-hidden="true">
            <path d="M1.5 1.5L10.5 10.5M10.5 1.5L1.5 10.5" class="k-missed" />
          </svg>
          came outside
        </li>
      </ul>
    </figure>
  );
}

function Plate({ rows, room, wordsId }: { readonly rows: readonly TrackRow[]; readonly room: Room; readonly wordsId: string }) {
  const { rem } = room;
  const plate = layOutSpans(rows, room);
  const letters = Math.floor((Math.min(...plate.scale.map(({ x }) => x), plate.zero) - 2 * rem) / (0.45 * rem));
  return (
    <svg width={plate.width} height={plate.height} viewBox={`0 0 ${plate.width} ${plate.height}`} role="img" aria-labelledby={wordsId}>
      {plate.scale.map(({ days, x }) => (
        <g key={days}>
          <line x1={x} x2={x} y1={plate.head - 4} y2={plate.height} class={days === 0 ? "k-axis" : "k-rule"} />
          <text x={x} y={plate.head - 0.6 * rem} class="mid">
            {days === 0 ? "likely day" : `${Math.abs(days)} d ${days < 0 ? "early" : "late"}`}
          </text>
        </g>
      ))}
      {plate.rows.map(({ row, y, from, to, came, inside }) => (
        <g key={`${row.sowingId}${row.season ?? ""}`}>
          <text x={0} y={y + 0.28 * rem}>
            {shortened(rowName(row), letters)}
          </text>
          <rect x={from} y={y - 0.28 * rem} width={Math.max(1, to - from)} height={0.56 * rem} class="k-edge" />
          {inside ? <circle cx={came} cy={y} r={4.5} class="k-ink-fill" /> : <path d={`M${came - 4.5} ${y - 4.5}L${came + 4.5} ${y + 4.5}M${came + 4.5} ${y - 4.5}L${came - 4.5} ${y + 4.5}`} class="k-missed" />}
        </g>
      ))}
    </svg>
  );
}

function shortened(name: string, letters: number): string {
  return name.length <= letters ? name : `${name.slice(0, Math.max(4, letters - 1)).trimEnd()}…`;
}
