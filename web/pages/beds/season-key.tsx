/** What the marks of a sowing's season mean; only those that are drawn. */
import type { SeasonFacts } from "./season-plate.ts";

export function SeasonKey({ facts: { forecast, marks, picks, today, weekly } }: { readonly facts: SeasonFacts }) {
  const ahead = forecast.firstPick !== null && forecast.firstPick.high > today;
  const hills = weekly && forecast.weeks.some(({ grams }) => grams.low < grams.high);
  return (
    <ul class="key">
      {ahead && (
        <li>
          <svg width="12" height="12" aria-hidden="true">
            <circle cx="6" cy="6" r="5" class="k-hill" />
          </svg>
          first pick, each dot one season in 20
        </li>
      )}
      {marks.some(({ begins }) => !begins) && (
        <li>
          <svg width="12" height="12" aria-hidden="true">
            <path d="M1.5 6L6 1.5L10.5 6L6 10.5Z" class="k-ink-fill" />
          </svg>
          seen
        </li>
      )}
      {forecast.lastPick !== null && forecast.lastPick.high > today && (
        <li>
          <svg width="26" height="12" aria-hidden="true">
            <path d="M1 2V10M1 6H25M25 2V10" class="k-range k-nofill" />
            <path d="M8 6L13 1L18 6L13 11Z" class="k-hill" />
          </svg>
          last pick, earliest, most and latest likely
        </li>
      )}
      {weekly && picks.length > 0 && (
        <li>
          <svg width="14" height="12" aria-hidden="true">
            <rect x="1" y="3" width="4" height="9" class="k-picked" />
            <rect x="8" y="0" width="4" height="12" class="k-picked" />
          </svg>
          picked
        </li>
      )}
      {hills && (
        <li>
          <svg width="26" height="12" aria-hidden="true">
            <path d="M0 12C7 12 8 0 13 0S19 12 26 12Z" class="k-edge" />
            <path d="M2 12C9 12 8 3.5 13 3.5S18 12 24 12Z" class="k-hill" />
          </svg>
          solid likely, pale edge high
        </li>
      )}
    </ul>
  );
}
