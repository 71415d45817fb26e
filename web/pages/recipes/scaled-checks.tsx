/** What does not simply scale, and whether it fits: each headed by one word. Where a dish changes, both are drawn to one scale. */
import type { Dish, Scaled } from "#shared/contracts/scaling.ts";
import { Measured } from "../../parts/measured.tsx";
import { written } from "../../parts/written.ts";
import { dishWords, sizeOf } from "./scaled-words.ts";

interface ChecksProps {
  readonly scaled: Scaled;
  readonly dishes: { readonly from: Dish; readonly to: Dish } | null;
}

export function Checks({ scaled, dishes }: ChecksProps) {
  const fits = scaled.fits.filter(({ what }) => what !== "dish" || dishes === null);
  const dish = scaled.fits.find(({ what }) => what === "dish");
  if (scaled.doesNotScale.length + scaled.fits.length === 0 && dishes === null) return null;
  return (
    <section class="sec" aria-labelledby="checks-h">
      <h2 id="checks-h">What does not simply scale</h2>
      <dl class="checks">
        {dishes && (
          <div class="wide">
            <dt>dish</dt>
            <dd>
              {dish && written(dish.text)}
              <TwoDishes {...dishes} />
            </dd>
          </div>
        )}
        {scaled.doesNotScale.map(({ what, text }) => (
          <div key={`${what}${text}`}>
            <dt>{what}</dt>
            <dd>{written(text)}</dd>
          </div>
        ))}
        {fits.map(({ what, fits: does, text }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd class={does === false ? "over" : undefined}>{written(text)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const WIDEST_REM = 22;
const GAP_REM = 2;

function TwoDishes({ from, to }: { readonly from: Dish; readonly to: Dish }) {
  return (
    <Measured class="two-dishes">
      {({ width, rem }) => {
        const [a, b] = [sizeOf(from), sizeOf(to)];
        const cm = (Math.min(width, WIDEST_REM * rem) - GAP_REM * rem) / (a.wideCm + b.wideCm);
        const high = Math.max(a.highCm, b.highCm) * cm;
        const left = a.wideCm * cm + GAP_REM * rem;
        const label = (x: number, words: string, what: string) => (
          <text x={x} y={high + 1.5 * rem} class={what === "ours" ? "t-ink mid" : "mid"}>
            {words}
          </text>
        );
        return (
          <svg width={width} height={high + 2 * rem} viewBox={`0 0 ${width} ${high + 2 * rem}`} role="img" aria-label={`The dish it is written for, ${dishWords(from)}, beside ours, ${dishWords(to)}, to one scale`}>
            <Shape dish={from} x={1} y={(high - a.highCm * cm) / 2 + 1} cm={cm} />
            <Shape dish={to} x={left} y={(high - b.highCm * cm) / 2 + 1} cm={cm} ours />
            {label((a.wideCm * cm) / 2, dishWords(from), "written")}
            {label(left + (b.wideCm * cm) / 2, dishWords(to), "ours")}
          </svg>
        );
      }}
    </Measured>
  );
}

function Shape({ dish, x, y, cm, ours = false }: { readonly dish: Dish; readonly x: number; readonly y: number; readonly cm: number; readonly ours?: boolean }) {
  const { wideCm, highCm } = sizeOf(dish);
  const name = `k-ink${ours ? " k-pan" : ""}`;
  if (dish.shape === "round") return <circle cx={x + (wideCm * cm) / 2} cy={y + (wideCm * cm) / 2} r={(wideCm * cm) / 2 - 1} class={name} />;
  return <rect x={x} y={y} width={wideCm * cm - 2} height={highCm * cm - 2} class={name} />;
}
