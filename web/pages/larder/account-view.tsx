/** The gram account: one bar a crop, all on one scale, and the table that adds up to the gram. */
import type { GramAccount } from "#shared/contracts/gram-account.ts";
import { measured, whole } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { Measured } from "../../parts/measured.tsx";
import { setQuery } from "../../router.ts";
import { barOf, longestOf, PARTS } from "./account-bars.ts";

const ROW_REM = 2.5;
const LEFT_REM = 12.5;

export function AccountView({ account }: { readonly account: GramAccount }) {
  const crops = account.crops.filter(({ pickedGrams, unaccountedGrams }) => pickedGrams !== 0 || unaccountedGrams !== 0);
  return (
    <>
      <Answer>{account.headline}</Answer>
      <p class="acts no-print">
        {account.seasons.map((season) => (
          <button key={season} type="button" class="btn word" aria-pressed={season === account.season ? "true" : "false"} onClick={() => setQuery({ season: String(season) })}>
            {season}
          </button>
        ))}
        <a class="btn word" href="/larder">
          Back to the larder
        </a>
      </p>
      {crops.length > 0 && (
        <>
          <Measured class="account">{({ width, rem }) => <Bars crops={crops} width={width} rem={rem} />}</Measured>
          <Key />
          <Table crops={crops} />
        </>
      )}
    </>
  );
}

function Bars({ crops, width, rem }: { readonly crops: GramAccount["crops"]; readonly width: number; readonly rem: number }) {
  const narrow = width < 34 * rem;
  const left = narrow ? 0 : LEFT_REM * rem;
  const right = narrow ? 0 : 5 * rem;
  const row = (narrow ? 3.5 : ROW_REM) * rem;
  const most = longestOf(crops);
  return (
    <svg width={width} height={crops.length * row} viewBox={`0 0 ${width} ${crops.length * row}`} role="img" aria-label="What became of each crop, in grams; the same stands in the table below">
      <defs>
        <pattern id="lost" width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1={0} x2={0} y1={0} y2={6} class="k-hatch" />
        </pattern>
      </defs>
      {crops.map((crop, i) => {
        const y = i * row;
        const top = y + (narrow ? 1.7 : 0.6) * rem;
        return (
          <g key={crop.crop}>
            <text x={0} y={y + (narrow ? 1.25 : 1.55) * rem} class="t-name">
              {crop.name}
            </text>
            <text x={width} y={y + (narrow ? 1.25 : 1.55) * rem} class="end t-ink">
              {measured(crop.pickedGrams)}
            </text>
            {barOf(crop, most, width - left - right).map((part) => (
              <rect key={part.key} x={left + part.x} y={top} width={Math.max(1, part.width - 1)} height={1.2 * rem} class={part.mark} {...(part.mark === "k-lost" ? { fill: "url(#lost)" } : {})} />
            ))}
            <line x1={0} x2={width} y1={y + row - 1} y2={y + row - 1} class="k-rule" />
          </g>
        );
      })}
    </svg>
  );
}

function Key() {
  return (
    <ul class="key">
      {PARTS.map(({ key, words, mark }) => (
        <li key={key}>
          <svg width={22} height={12} aria-hidden="true">
            <rect x={0.5} y={0.5} width={21} height={11} class={mark} {...(mark === "k-lost" ? { fill: "url(#lost)" } : {})} />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}

function Table({ crops }: { readonly crops: GramAccount["crops"] }) {
  return (
    <section class="sec" aria-labelledby="grams-h">
      <h2 id="grams-h">To the gram</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="The table; it scrolls sideways on a phone">
        <table class="grams">
          <thead>
            <tr>
              <th scope="col">Crop, g</th>
              <th scope="col" class="num">
                Picked
              </th>
              {PARTS.map(({ key, words }) => (
                <th scope="col" class="num" key={key}>
                  {words}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {crops.map((crop) => (
              <tr key={crop.crop}>
                <th scope="row">{crop.name}</th>
                <td class="num">{whole(crop.pickedGrams)}</td>
                {PARTS.map(({ key }) => (
                  <td class={`num${key === "unaccountedGrams" && crop[key] !== 0 ? " over" : ""}`} key={key}>
                    {crop[key] === 0 ? "–" : whole(crop[key])}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
