/** Twenty seasons on an axis of dates: each dot one season in 20. Words with the same dates stand below, under the id given. */
import type { DateBand } from "#shared/contracts/common.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { MONTHS } from "../format.ts";
import { dotsHeight, layOutDots } from "./date-dots.ts";
import { Measured } from "./measured.tsx";

interface DateDotsProps {
  readonly dates: readonly LocalDate[];
  readonly start: LocalDate | null;
  /** What was done on the first day: “sown”. */
  readonly startWord: string;
  readonly frost: DateBand | null;
  /** Id of the words that say the same. */
  readonly wordsId: string;
  readonly small?: boolean;
}

export function DateDots({ dates, start, startWord, frost, wordsId, small = false }: DateDotsProps) {
  return (
    <Measured class="date-dots">
      {({ width, rem }) => {
        if (dates.length === 0) return <Blank width={width} rem={rem} />;
        const plate = layOutDots({ dates, start, width, rem, small });
        const { height, base, x } = plate;
        return (
          <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={wordsId}>
            <line x1={0} x2={width} y1={base} y2={base} class="k-axis" />
            {plate.months.map((month) => (
              <g key={month.first}>
                <line x1={month.x} x2={month.x} y1={base} y2={base + 6} class="k-axis" />
                {month.labelled && (
                  <text x={month.x + 3} y={base + 1.25 * rem}>
                    {monthWord(month.first, plate.long)}
                  </text>
                )}
              </g>
            ))}
            {frost && <FrostMark frost={frost} x={x} base={base} rem={rem} width={width} />}
            {plate.dots.map(({ cx, cy }, i) => (
              <circle key={i} cx={cx} cy={cy} r={plate.radius} class="k-hill" />
            ))}
            {start !== null && (
              <g>
                <circle cx={x(start)} cy={base} r={0.24 * rem} class="k-sown" />
                <text x={Math.max(0, x(start) - 4)} y={base - 0.7 * rem} class="t-ink k-halo">
                  {startWord}
                </text>
              </g>
            )}
          </svg>
        );
      }}
    </Measured>
  );
}

/** Nothing to say: the plate keeps its place, its ground line dotted. */
function Blank({ width, rem }: { readonly width: number; readonly rem: number }) {
  const height = dotsHeight(width, rem);
  return (
    <svg class="blank" width={width} height={height} aria-hidden="true">
      <line x1={0} x2={width} y1={height - 1.9 * rem} y2={height - 1.9 * rem} class="k-waits" />
    </svg>
  );
}

function FrostMark({ frost, x, base, rem, width }: { readonly frost: DateBand; readonly x: (date: LocalDate) => number; readonly base: number; readonly rem: number; readonly width: number }) {
  const [a, at, b] = [x(frost.low), x(frost.likely), Math.min(width, x(frost.high))];
  if (at < 0 || at > width) return null;
  const y = 1.4 * rem;
  return (
    <g>
      <path d={`M${Math.max(0, a)} ${y}H${b}`} class="k-cold" />
      <line x1={at} x2={at} y1={y - 4} y2={base} class="k-cold k-dots" />
      <circle cx={at} cy={y} r={3.2} class="k-cold-fill" />
      <text x={at} y={0.8 * rem} class={`t-cold ${at > width - 4 * rem ? "end" : "mid"}`}>
        first frost
      </text>
    </g>
  );
}

function monthWord(first: LocalDate, long: boolean): string {
  const month = MONTHS[Number(first.slice(5, 7)) - 1] ?? "";
  const year = first.slice(5, 7) === "01" ? ` ${first.slice(0, 4)}` : "";
  return (long ? month : month.slice(0, 3)) + year;
}
