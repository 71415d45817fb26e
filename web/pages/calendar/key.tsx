/** What the marks of the year sheet mean. */
import { Hatch } from "../../parts/hatch.tsx";

export function Key() {
  return (
    <ul class="key">
      <li>
        <svg width="14" height="12" aria-hidden="true">
          <rect x="1" y="3" width="4" height="9" class="k-picked" />
          <rect x="8" y="0" width="4" height="12" class="k-picked" />
        </svg>
        picked
      </li>
      <li>
        <svg width="26" height="12" aria-hidden="true">
          <path d="M0 12C7 12 8 0 13 0S19 12 26 12Z" class="k-edge" />
          <path d="M2 12C9 12 8 3.5 13 3.5S18 12 24 12Z" class="k-hill" />
          <path d="M5 12C10 12 9 8 13 8S17 12 21 12" class="k-low" />
        </svg>
        solid likely, line low, pale edge high
      </li>
      <li>
        <svg width="20" height="12" aria-hidden="true">
          <defs>
            <Hatch id="key-hatch" />
          </defs>
          <rect x=".7" y=".7" width="18.6" height="10.6" class="k-over-bg" />
          <rect x=".7" y=".7" width="18.6" height="10.6" fill="url(#key-hatch)" />
        </svg>
        over what we eat
      </li>
      <li>
        <svg width="22" height="12" aria-hidden="true">
          <line x1="3" x2="22" y1="8" y2="8" class="k-axis" />
          <circle cx="4" cy="8" r="3" class="k-sown" />
        </svg>
        sown or set out
      </li>
      <li>
        <svg width="26" height="12" aria-hidden="true">
          <path d="M1 3V9M1 6H25M25 3V9" class="k-range k-nofill" />
          <path d="M8 6L13 1L18 6L13 11Z" class="k-hill" />
        </svg>
        one lift
      </li>
      <li>
        <svg width="26" height="12" aria-hidden="true">
          <path d="M1 3V9M1 6H25M25 3V9" class="k-cold" />
          <circle cx="13" cy="6" r="3.2" class="k-cold-fill" />
        </svg>
        frost, earliest to latest
      </li>
      <li>all on one scale</li>
    </ul>
  );
}
