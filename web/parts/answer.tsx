/** The sentence that answers the page's question: the one h1. It takes the focus when the reader has come to the page. */
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { focusOwed } from "../router.ts";

export function Answer({ live = false, waits = false, children }: { readonly live?: boolean; readonly waits?: boolean; readonly children: ComponentChildren }) {
  const sentence = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    if (focusOwed()) sentence.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h1 class={`answer${live ? " live" : ""}${waits ? " waits" : ""}`} tabIndex={-1} aria-live={live ? "polite" : undefined} ref={sentence}>
      {children}
    </h1>
  );
}
