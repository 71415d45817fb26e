/** Jars, lids and bags that the week takes, against what is there: there is solid, what is short is hatched. One scale for all. */
import type { Shopping } from "#shared/contracts/shopping.ts";
import { Hatch } from "../../parts/hatch.tsx";
import { Measured } from "../../parts/measured.tsx";
import { KIND_WORDS, shortWords } from "./supply-words.ts";

const ROW_REM = 3.75;

export function ShortPlate({ lines }: { readonly lines: Shopping["supplies"] }) {
  if (lines.length === 0) return null;
  const most = Math.max(...lines.flatMap(({ need, have }) => [need, have]));
  return (
    <Measured class="short-plate">
      {({ width, rem }) => (
        <svg width={width} height={lines.length * ROW_REM * rem} viewBox={`0 0 ${width} ${lines.length * ROW_REM * rem}`} role="img" aria-label={lines.map(shortWords).join("; ")}>
          <defs>
            <Hatch id="short-hatch" />
          </defs>
          {lines.map((line, i) => {
            const y = i * ROW_REM * rem;
            const x = (n: number): number => (n / most) * (width - 2) + 1;
            return (
              <g key={line.kind}>
                <text x={0} y={y + 1.2 * rem} class="t-name">
                  {KIND_WORDS[line.kind]}
                </text>
                <text x={width} y={y + 1.2 * rem} class={`end t-small${line.short > 0 ? " t-over" : ""}`}>
                  {shortWords(line)}
                </text>
                <rect x={1} y={y + 1.7 * rem} width={x(line.have) - 1} height={1.1 * rem} class="k-picked" />
                {line.short > 0 && <rect x={x(line.have)} y={y + 1.7 * rem} width={x(line.need) - x(line.have)} height={1.1 * rem} class="k-over-bg" />}
                {line.short > 0 && <rect x={x(line.have)} y={y + 1.7 * rem} width={x(line.need) - x(line.have)} height={1.1 * rem} fill="url(#short-hatch)" />}
                <line x1={x(line.need)} x2={x(line.need)} y1={y + 1.4 * rem} y2={y + 3.1 * rem} class="k-need-bg" />
                <line x1={x(line.need)} x2={x(line.need)} y1={y + 1.4 * rem} y2={y + 3.1 * rem} class="k-today" />
              </g>
            );
          })}
        </svg>
      )}
    </Measured>
  );
}
