/** Beds by weeks: ground line while a sowing grows, bar while it is picked, the sowing being written dashed. The list below says the same. */
import type { Bed } from "#shared/contracts/beds.ts";
import type { DateBand } from "#shared/contracts/common.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { area, areaOf, MONTHS } from "../../format.ts";
import { Measured } from "../../parts/measured.tsx";
import { layOutLanes, onPlate, type LaneBar, type LanesPlate, type Stand } from "./lanes.ts";

interface BedStripProps {
  readonly beds: readonly Bed[];
  readonly stands: readonly Stand[];
  readonly today: LocalDate;
  readonly frost: { readonly lastSpring: DateBand | null; readonly firstAutumn: DateBand | null } | null;
}

export function BedStrip({ beds, stands, today, frost }: BedStripProps) {
  return (
    <>
      <Measured class="bed-strip">
        {(room) => {
          const plate = layOutLanes(beds, stands, today, room);
          return (
            <svg width={plate.width} height={plate.height} viewBox={`0 0 ${plate.width} ${plate.height}`} role="img" aria-label="Beds by weeks; the same stands in the list below">
              <Months plate={plate} />
              {[frost?.lastSpring, frost?.firstAutumn].map((band) =>
                band && onPlate(plate, band.likely) ? (
                  <line key={band.likely} x1={plate.x(band.likely)} x2={plate.x(band.likely)} y1={1.6 * plate.rem} y2={plate.height - 4} class="k-cold k-dots" />
                ) : null,
              )}
              <line x1={plate.x(today)} x2={plate.x(today)} y1={0.4 * plate.rem} y2={plate.height - 4} class="k-today" />
              {plate.beds.map((row) => (
                <BedRow key={row.bed.id} row={row} plate={plate} />
              ))}
            </svg>
          );
        }}
      </Measured>
      <StripKey />
    </>
  );
}

function Months({ plate }: { readonly plate: LanesPlate }) {
  const { rem } = plate;
  const roomy = plate.end - plate.left > 12 * 5 * rem;
  return (
    <>
      {plate.months.map(({ first, from, to }, i) => (
        <g key={first}>
          {i > 0 && <line x1={from} x2={from} y1={0.9 * rem} y2={plate.height - 4} class="k-rule" />}
          <text x={(from + to) / 2} y={1.2 * rem} class="mid k-halo">
            {roomy ? MONTHS[Number(first.slice(5, 7)) - 1] : MONTHS[Number(first.slice(5, 7)) - 1]?.slice(0, 3)}
          </text>
        </g>
      ))}
      <text x={plate.width} y={1.2 * rem} class="end">
        free now
      </text>
    </>
  );
}

function BedRow({ row, plate }: { readonly row: LanesPlate["beds"][number]; readonly plate: LanesPlate }) {
  const { bed, top, bottom, bars } = row;
  const y = top + 1.4 * plate.rem;
  return (
    <g>
      <line x1={0} x2={plate.width} y1={bottom} y2={bottom} class="k-rule" />
      <text x={0} y={y} class="t-name">
        {bed.name.length > 16 ? `${bed.name.slice(0, 15)}…` : bed.name}
      </text>
      <text x={plate.width} y={y} class={`end${bed.freeM2 > 0 ? " t-ink" : ""}`}>
        {bed.freeM2 > 0 ? areaOf(bed.freeM2, bed.areaM2) : `full, ${area(bed.areaM2)}`}
      </text>
      {bars.map((bar) => (
        <Bar key={bar.stand.id} bar={bar} rem={plate.rem} />
      ))}
    </g>
  );
}

function Bar({ bar, rem }: { readonly bar: LaneBar; readonly rem: number }) {
  const { stand, y } = bar;
  return (
    <g>
      <line x1={bar.from} x2={bar.to} y1={y} y2={y} class={stand.planned ? "k-ink k-dash" : "k-axis"} />
      {bar.begins && <circle cx={bar.from} cy={y} r={0.17 * rem} class="k-sown" />}
      {bar.pick && <rect x={bar.pick.from} y={y - 0.5 * rem} width={Math.max(3, bar.pick.to - bar.pick.from)} height={0.5 * rem} class={stand.planned ? "k-plan" : "k-hill"} />}
      <text x={bar.from + 0.4 * rem} y={y - 0.35 * rem} class={`t-ink k-halo${stand.planned ? " t-bold" : ""}`}>
        {stand.name}
      </text>
    </g>
  );
}

function StripKey() {
  return (
    <ul class="key">
      <li>
        <svg width="30" height="12" aria-hidden="true">
          <line x1="2" x2="30" y1="10" y2="10" class="k-axis" />
          <circle cx="3" cy="10" r="2.5" class="k-sown" />
        </svg>
        sown, growing
      </li>
      <li>
        <svg width="26" height="12" aria-hidden="true">
          <rect x="0" y="3" width="26" height="8" class="k-hill" />
        </svg>
        picking
      </li>
      <li>
        <svg width="26" height="12" aria-hidden="true">
          <rect x=".7" y="3" width="24" height="7.5" class="k-plan" />
        </svg>
        the sowing being written
      </li>
    </ul>
  );
}
