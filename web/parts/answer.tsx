/** The sentence that answers the page's question: the one h1. The shell moves the focus here when the page is opened. */
import type { ComponentChildren } from "preact";

export function Answer({ live = false, waits = false, children }: { readonly live?: boolean; readonly waits?: boolean; readonly children: ComponentChildren }) {
  return (
    <h1 class={`answer${live ? " live" : ""}${waits ? " waits" : ""}`} tabIndex={-1} aria-live={live ? "polite" : undefined}>
      {children}
    </h1>
  );
}
