/** The sum against what is eaten: pegs, hill, eating line, and hatched the part that is over. Drawn the same on the year sheet and on the phone's strip. */
import { Hatch } from "../../parts/hatch.tsx";
import { areaPath, bandPath, linePath, pegsPath, runsOf, seriesPoints, stepPath, type Ground, type Point } from "../../parts/hills.ts";
import type { YearFigures } from "./year.ts";

/** Less than this is not drawn as over. */
const LEAST_G = 50;

export function AllTogether({ figures, ground, id }: { readonly figures: YearFigures; readonly ground: Ground; readonly id: string }) {
  const { total, now } = figures;
  const high = seriesPoints(total.high, ground);
  const likely = seriesPoints(total.likely, ground);
  const kept = seriesPoints(total.likely.map((grams, i) => grams - (total.over[i] as number)), ground);
  const over = runsOf(total.over, now, LEAST_G);
  return (
    <>
      <defs>
        <Hatch id={`${id}-hatch`} />
        <clipPath id={`${id}-over`}>
          {over.map((run) => {
            const from = ground.x(Math.max(ground.now, run.first - 0.5));
            return <rect key={run.first} x={from} y={0} width={ground.x(Math.min(ground.weeks, run.last + 1.5)) - from} height={ground.base} />;
          })}
        </clipPath>
      </defs>
      {high.length > 0 && <path d={areaPath(high, ground.base)} class="k-edge" />}
      {likely.length > 0 && <path d={areaPath(likely, ground.base)} class="k-hill" />}
      {over.length > 0 && <Over kept={kept} likely={likely} id={id} />}
      <path d={pegsPath(total.picked, ground)} class="k-picked" />
      <path d={stepPath(total.eats, ground)} class="k-ink" />
    </>
  );
}

function Over({ kept, likely, id }: { readonly kept: readonly Point[]; readonly likely: readonly Point[]; readonly id: string }) {
  const field = bandPath(kept, likely);
  return (
    <g clip-path={`url(#${id}-over)`}>
      <path d={field} class="k-paper" />
      <path d={field} fill={`url(#${id}-hatch)`} />
      <path d={linePath(likely)} class="k-over-line" />
      <path d={linePath(kept)} class="k-over-line" />
    </g>
  );
}
