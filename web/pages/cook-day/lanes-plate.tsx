/** The plate of a cook day: hands as solid blocks, the oven as a line that rises with its heat, burners as frames, the rest as brackets. */
import type { ComponentChildren } from "preact";
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { length } from "../../format.ts";
import { Measured, type Room } from "../../parts/measured.tsx";
import { clockMarks, markEvery } from "./clock-marks.ts";
import { clockAt, startOf } from "./day-words.ts";
import { dragBlock } from "./drag-block.ts";
import { AloneLane, BurnerLane, HandsLane, HeatPattern, OvenLane } from "./lane-rows.tsx";
import { Key } from "./lanes-key.tsx";
import { lanesOf, stacked, type Lanes, type Stretch } from "./lanes.ts";
import { WaitLane, WAIT_LABEL_REM } from "./wait-lane.tsx";
import { waitsOf, type Wait } from "./waits.ts";

interface PlateProps {
  readonly day: CookDay;
  readonly plan: Timetable;
  readonly recipes: readonly Recipe[];
  /** A block of hands was dragged so many minutes; `first` is its number in the list. Left out where nothing can be moved. */
  readonly onDrag?: ((first: number, byMin: number) => void) | undefined;
}

export function LanesPlate({ day, plan, recipes, onDrag }: PlateProps) {
  const lanes = lanesOf(day, plan, recipes);
  const waits = waitsOf(plan, recipes);
  return (
    <section class={`lanes${onDrag ? " movable" : ""}`} aria-label="Lanes" onPointerDown={onDrag && ((event) => dragBlock(event, lanes.endMin, onDrag))}>
      <div class="scroll" tabIndex={0} role="region" aria-label="Lanes; they scroll sideways on a phone">
        <Measured>{(room) => <Drawing day={day} plan={plan} lanes={lanes} waits={waits} room={room} heat="heat" />}</Measured>
      </div>
      {/* drawn beforehand, so that a print needs neither a new drawing nor the service */}
      <div class="on-paper">
        <Drawing day={day} plan={plan} lanes={lanes} waits={waits} room={SHEET} heat="heat-print" />
      </div>
      <Key away={lanes.hands.some(({ away }) => away.length > 0)} waits={waits.length > 0} />
    </section>
  );
}

const HANDS_REM = 3.6;
const OVEN_REM = 4.8;
const BURNER_REM = 2.6;
const ALONE_REM = 1.75;
/** Room for the figures of a clock mark, and for “done 14:12” at the end. */
const MARK_REM = 3.6;
const DONE_REM = 6.5;
/** The narrowest plate; on a phone it scrolls. */
const LEAST_REM = 46;

/** A third more than a sheet of A4 with margins of 14 mm has (687 px), at the 10.5 points of a print: it comes out at three quarters. US letter is 6 mm wider. */
const SHEET: Room = { width: 916, rem: 14 };

interface DrawingProps {
  readonly day: CookDay;
  readonly plan: Timetable;
  readonly lanes: Lanes;
  readonly waits: readonly Wait[];
  readonly room: Room;
  /** Id of the pattern that stands for heat; one for each drawing. */
  readonly heat: string;
}

function Drawing({ day, plan, lanes, waits, room, heat }: DrawingProps) {
  const { rem } = room;
  const width = Math.max(room.width, LEAST_REM * rem);
  const left = 7.5 * rem;
  const inner = width - left - rem;
  const x = (minute: number): number => left + (minute / lanes.endMin) * inner;
  const top = 1.75 * rem;
  const rows: ComponentChildren[] = [];
  let y = top + 0.4 * rem;
  const row = (name: string, sub: string, height: number, draw: (y: number) => ComponentChildren): void => {
    rows.push(<Row key={`${name}${y}`} name={name} sub={sub} y={y} height={height} width={width} rem={rem} content={draw(y)} />);
    y += height;
  };
  const several = lanes.hands.length > 1;
  lanes.hands.forEach((lane, i) => row(several ? `Cook ${i + 1}` : "Hands", `${length(lane.busyMin)} of ${length(lanes.endMin)}`, HANDS_REM * rem, (at) => <HandsLane lane={lane} endMin={lanes.endMin} x={x} y={at} rem={rem} />));
  lanes.ovens.forEach(({ oven, runs }) => row(lanes.ovens.length > 1 ? `Oven ${oven}` : "Oven", "", OVEN_REM * rem, (at) => <OvenLane runs={runs} heat={heat} preheatMin={day.kitchen.ovens[oven - 1]?.preheatMin ?? 0} endMin={lanes.endMin} x={x} y={at} rem={rem} />));
  lanes.burners.forEach(({ burner, spans }) => row(`Burner ${burner}`, "", BURNER_REM * rem, (at) => <BurnerLane spans={spans} x={x} y={at} rem={rem} />));
  if (lanes.alone.length > 0) row("By itself", "", (lanes.alone.length * ALONE_REM + 0.4) * rem, (at) => <AloneLane rows={lanes.alone} x={x} y={at} rem={rem} />);
  const waitRows = stacked(waits.map((wait) => withRoom(wait, (WAIT_LABEL_REM * rem * lanes.endMin) / inner, lanes.endMin)));
  if (waitRows.length > 0) row("May wait", "to the stroke", (waitRows.length * ALONE_REM + 0.4) * rem, (at) => <WaitLane day={day} rows={waitRows} endMin={lanes.endMin} x={x} y={at} rem={rem} />);
  const done = plan.endMin ?? lanes.endMin;
  const words = `Lanes for hands, oven, burners, what goes by itself and how long it may wait, from ${day.startsAt} to ${clockAt(day, done)}. The same steps stand in the list below.`;
  return (
    <svg width={width} height={y + 4} viewBox={`0 0 ${width} ${y + 4}`} role="img" aria-label={words} data-lane={inner}>
      <HeatPattern id={heat} />
      {clockMarks(startOf(day), lanes.endMin, markEvery(lanes.endMin, inner, MARK_REM * rem)).map((minute) => (
        <g key={minute}>
          <line x1={x(minute)} x2={x(minute)} y1={top} y2={y} class="k-rule" />
          {(x(done) - x(minute) > DONE_REM * rem || minute === 0) && (
            <text x={x(minute)} y={1.1 * rem} class="t-ink mid">
              {clockAt(day, minute)}
            </text>
          )}
        </g>
      ))}
      <line x1={0} x2={width} y1={top} y2={top} class="k-axis" />
      {rows}
      <line x1={x(done)} x2={x(done)} y1={top} y2={y} class="k-today" />
      <text x={x(done) + 0.5 * rem} y={1.1 * rem} class="t-ink end t-bold">
        done {clockAt(day, done)}
      </text>
    </svg>
  );
}

/** A wait keeps room for its words, so that none stands over the next; near the end they stand before its stroke. */
function withRoom(wait: Wait, labelMin: number, endMin: number): Stretch & { readonly wait: Wait } {
  const late = wait.fromMin + labelMin > endMin;
  return { wait, fromMin: late ? endMin - labelMin : wait.fromMin, toMin: late ? endMin : Math.max(wait.toMin, wait.fromMin + labelMin) };
}

interface RowProps {
  readonly name: string;
  readonly sub: string;
  readonly y: number;
  readonly height: number;
  readonly width: number;
  readonly rem: number;
  readonly content: ComponentChildren;
}

function Row({ name, sub, y, height, width, rem, content }: RowProps) {
  return (
    <g>
      <text x={0} y={y + 1.5 * rem} class="t-name">
        {name}
      </text>
      {sub && (
        <text x={0} y={y + 2.7 * rem}>
          {sub}
        </text>
      )}
      {content}
      <line x1={0} x2={width} y1={y + height} y2={y + height} class="k-rule" />
    </g>
  );
}
