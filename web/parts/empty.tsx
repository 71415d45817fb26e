/** Nothing there yet: why, what will appear, and one way on. */
import type { ComponentChildren } from "preact";
import { Answer } from "./answer.tsx";
import { DottedPlate } from "./waiting.tsx";

interface EmptyProps {
  /** Why nothing can be said. */
  readonly sentence: string;
  /** What is enough, and what will stand here then. */
  readonly then: string;
  /** One button or link. */
  readonly children: ComponentChildren;
}

export function Empty({ sentence, then, children }: EmptyProps) {
  return (
    <>
      <Answer>{sentence}</Answer>
      <DottedPlate />
      <p class="under">{then}</p>
      <p class="acts">{children}</p>
    </>
  );
}
