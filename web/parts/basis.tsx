/** What the figures of a page rest on: sources with their attribution, and the notes of the reckoning. */
import { inOurUnits } from "../format.ts";

interface BasisProps {
  readonly basis: readonly { readonly id: string; readonly text: string }[];
  readonly notes: readonly string[];
}

export function Basis({ basis, notes }: BasisProps) {
  if (basis.length === 0 && notes.length === 0) return null;
  // several sources may have said the same
  const texts = [...new Set(basis.map(({ text }) => text))];
  return (
    <details class="basis">
      <summary class="word">What these figures rest on</summary>
      <ul class="rows">
        {notes.map((note) => (
          <li key={note}>{inOurUnits(note)}</li>
        ))}
        {texts.map((text) => (
          <li key={text} class="quiet">
            {text}
          </li>
        ))}
      </ul>
    </details>
  );
}
