/** The picture of one sowing's season. The sentences beside it and the table below it say the same. */
import type { DateBand } from "#shared/contracts/common.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { MONTHS, plain, tableUnit } from "../../format.ts";
import { areaPath, hillPoints, linePath, pegsPath, runsOf } from "../../parts/hills.ts";
import { Measured } from "../../parts/measured.tsx";
import { layOutSeason, type SeasonFacts, type SeasonPlate as Plate, type WeekLane } from "./season-plate.ts";

interface SeasonPlateProps {
  readonly facts: SeasonFacts;
  /** Id of the words that say the same. */
  readonly wordsId: string;
}

/** Weeks with less in a good season are not drawn. */
const LEAST_G = 30;

export function SeasonPlate({ facts, wordsId }: SeasonPlateProps) {
  return (
    <Measured class="season-plate">
      {(room) => {
        const plate = layOutSeason(facts, room, tableUnit().grams);
        return (
          <svg width={plate.width} height={plate.height} viewBox={`0 0 ${plate.width} ${plate.height}`} role="img" aria-labelledby={wordsId}>
            <Months plate={plate} />
            <Frosts facts={facts} plate={plate} />
            {plate.lane && <Amounts lane={plate.lane} plate={plate} />}
            <Today today={facts.today} plate={plate} />
            <Days facts={facts} plate={plate} />
          </svg>
        );
      }}
    </Measured>
  );
}

function Months({ plate }: { readonly plate: Plate }) {
  const { axis, rem, width } = plate;
  return (
    <>
      {plate.months.map(({ first, x, labelled }) => (
        <g key={first}>
          <line x1={x} x2={x} y1={2.4 * rem} y2={axis + 5} class="k-rule" />
          {labelled && (
            <text x={x + 3} y={axis + 1.3 * rem}>
              {monthWord(first, width > 60 * rem)}
            </text>
          )}
        </g>
      ))}
      <line x1={0} x2={width} y1={axis} y2={axis} class="k-axis" />
    </>
  );
}

function monthWord(first: LocalDate, long: boolean): string {
  const month = MONTHS[Number(first.slice(5, 7)) - 1] ?? "";
  return (long ? month : month.slice(0, 3)) + (first.slice(5, 7) === "01" ? ` ${first.slice(0, 4)}` : "");
}

/** The line of days with what was done and seen, twenty seasons of the first pick, and the spread of the last. */
function Days({ facts, plate }: { readonly facts: SeasonFacts; readonly plate: Plate }) {
  const { line, rem, x, width } = plate;
  const begin = facts.marks.find(({ begins }) => begins);
  const last = facts.forecast.lastPick;
  return (
    <g>
      <line x1={begin ? x(begin.on) : 0} x2={last ? x(last.likely) : width} y1={line} y2={line} class="k-ink" />
      {plate.dots.map(({ cx, cy }, i) => (
        <circle key={i} cx={cx} cy={cy} r={plate.radius} class="k-hill" />
      ))}
      {plate.marks.map(({ mark, x: at, labelX, labelY, end }) => (
        <g key={`${mark.on}${mark.words}`}>
          <line x1={at} x2={at} y1={labelY + 3} y2={line} class="k-axis" />
          {mark.begins ? <circle cx={at} cy={line} r={0.24 * rem} class="k-sown" /> : <path d={`M${at - 4.5} ${line}L${at} ${line - 4.5}L${at + 4.5} ${line}L${at} ${line + 4.5}Z`} class="k-ink-fill" />}
          <text x={labelX} y={labelY} class={`t-ink k-halo${end ? " end" : ""}`}>
            {mark.words}
          </text>
        </g>
      ))}
      {last && last.high > facts.today && <LastPick last={last} plate={plate} />}
    </g>
  );
}

function LastPick({ last, plate }: { readonly last: DateBand; readonly plate: Plate }) {
  const { rem, x, line } = plate;
  const [a, at, b] = [x(last.low), x(last.likely), x(last.high)];
  const y = line + 1.05 * rem;
  const right = b + 5.2 * rem < plate.width;
  return (
    <g>
      <path d={`M${a} ${y - 4}V${y + 4}M${a} ${y}H${b}M${b} ${y - 4}V${y + 4}`} class="k-range k-nofill" />
      <path d={`M${at - 5} ${y}L${at} ${y - 5}L${at + 5} ${y}L${at} ${y + 5}Z`} class="k-hill" />
      <text x={right ? b + 0.5 * rem : a - 0.5 * rem} y={y + 0.28 * rem} class={`k-halo${right ? "" : " end"}`}>
        last pick
      </text>
    </g>
  );
}

function Frosts({ facts, plate }: { readonly facts: SeasonFacts; readonly plate: Plate }) {
  const { lastSpring, firstAutumn } = facts.forecast.frost;
  const todayX = plate.x(facts.today);
  return (
    <>
      {([["last frost", lastSpring], ["first frost", firstAutumn]] as const).map(([word, band]) => {
        if (!band) return null;
        const [a, at, b] = [plate.x(band.low), plate.x(band.likely), plate.x(band.high)];
        if (at < 0 || at > plate.width) return null;
        const y = 1.6 * plate.rem;
        const roomy = plate.width > 22 * plate.rem;
        const near = Math.abs(at - todayX) < (roomy ? 5.5 : 3) * plate.rem;
        const anchor = near ? (at < todayX ? "end" : "") : at > plate.width - 3 * plate.rem ? "end" : at < 3 * plate.rem ? "" : "mid";
        return (
          <g key={word}>
            <path d={`M${Math.max(0, a)} ${y}H${Math.min(plate.width, b)}`} class="k-cold" />
            <line x1={at} x2={at} y1={y} y2={plate.axis} class="k-cold k-dots" />
            <circle cx={at} cy={y} r={3.2} class="k-cold-fill" />
            <text x={at} y={0.9 * plate.rem} class={`t-cold ${anchor}`}>
              {roomy ? word : "frost"}
            </text>
          </g>
        );
      })}
    </>
  );
}

function Today({ today, plate }: { readonly today: LocalDate; readonly plate: Plate }) {
  const x = plate.x(today);
  if (x < 0 || x > plate.width) return null;
  const anchor = x > plate.width - 2 * plate.rem ? "end" : "mid";
  return (
    <g>
      <line x1={x} x2={x} y1={1.2 * plate.rem} y2={plate.axis} class="k-today" />
      <text x={x} y={0.9 * plate.rem} class={`t-ink t-bold k-halo ${anchor}`}>
        today
      </text>
    </g>
  );
}

function Amounts({ lane, plate }: { readonly lane: WeekLane; readonly plate: Plate }) {
  const { ground } = lane;
  const top = lane.scale[lane.scale.length - 1];
  return (
    <g>
      {lane.scale.map((grams) => (
        <g key={grams}>
          <line x1={0} x2={plate.width} y1={ground.y(grams)} y2={ground.y(grams)} class="k-rule" />
          <text x={0} y={ground.y(grams) - 4} class="k-halo">
            {plain(grams / tableUnit().grams)}
            {grams === top ? `\u00a0${tableUnit().word} a week` : ""}
          </text>
        </g>
      ))}
      {runsOf(lane.high, ground.now, LEAST_G).map((run) => (
        <g key={run.first}>
          <path d={areaPath(hillPoints(lane.high, run, ground), ground.base)} class="k-edge" />
          <path d={areaPath(hillPoints(lane.likely, run, ground), ground.base)} class="k-hill" />
          <path d={linePath(hillPoints(lane.low, run, ground))} class="k-low" />
        </g>
      ))}
      <path d={pegsPath(lane.picked, ground)} class="k-picked" />
    </g>
  );
}
