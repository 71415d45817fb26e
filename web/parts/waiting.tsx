/**
 * A page that waits: its rules dotted in their final place, nothing that moves. After one second the sentence says what is being
 * done, after five how to go on without it.
 */
import { useEffect, useState } from "preact/hooks";
import { Answer } from "./answer.tsx";

interface WaitingProps {
  /** The page's name, read out at once. */
  readonly name: string;
  /** What is being done: “Working out the year from the sowings and the weather on record.” */
  readonly doing: string;
  /** How to go on without it; a sentence. */
  readonly without?: string;
}

export function Waiting({ name, doing, without = "It takes longer than it should. The other pages can be used meanwhile." }: WaitingProps) {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const first = setTimeout(() => setSeconds(1), 1000);
    const second = setTimeout(() => setSeconds(5), 5000);
    return () => {
      clearTimeout(first);
      clearTimeout(second);
    };
  }, []);
  return (
    <>
      <Answer waits>{seconds === 0 ? <span class="vh">{name}</span> : doing}</Answer>
      <p class="under" role="status">
        {seconds === 5 ? without : ""}
      </p>
      <DottedPlate />
    </>
  );
}

/** Where a picture will stand. */
export function DottedPlate({ height = 56 }: { readonly height?: number }) {
  return (
    <svg class="wait" width="100%" height={height} aria-hidden="true">
      <line x1="0" x2="100%" y1={height / 3} y2={height / 3} />
      <line x1="0" x2="100%" y1={height - 1} y2={height - 1} />
    </svg>
  );
}
