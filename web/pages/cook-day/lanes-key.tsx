/** What the marks of the lanes mean, in words. */
import type { ComponentChildren } from "preact";

export function Key({ away, waits }: { readonly away: boolean; readonly waits: boolean }) {
  const entry = (words: string, mark: ComponentChildren) => (
    <li key={words}>
      <svg width={22} height={12} aria-hidden="true">
        {mark}
      </svg>
      {words}
    </li>
  );
  return (
    <ul class="key">
      {entry("hands", <rect width={22} height={12} class="k-ink-fill" />)}
      {away && entry("away", <rect x={0.7} y={0.7} width={20.6} height={10.6} class="k-plan" />)}
      {entry("on a burner", <rect x={0.7} y={0.7} width={20.6} height={10.6} class="k-ink" />)}
      {entry("heat of the oven", <path d="M1 11L6 2H16L21 11" class="k-ink" />)}
      {entry("by itself", <path d="M1 3V9M1 6H21M21 3V9" class="k-ink" />)}
      {waits && entry("may wait until the stroke", <WaitMark />)}
    </ul>
  );
}

function WaitMark() {
  return (
    <g>
      <path d="M1 6H20" class="k-ink k-dots" />
      <path d="M20.5 1V11" class="k-ink" />
      <circle cx={12} cy={6} r={2.6} class="k-ink-fill" />
    </g>
  );
}
