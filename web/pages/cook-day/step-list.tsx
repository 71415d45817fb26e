/** The steps in the order they begin; the list carries all that the lanes show. */
import { useEffect, useState } from "preact/hooks";
import type { CookDay } from "#shared/contracts/cook-days.ts";
import { listed } from "../../format.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import { UndoLine } from "../../parts/undo-line.tsx";
import { written } from "../../parts/written.ts";
import { clockAt, roundSentence, stepSentence } from "./day-words.ts";
import { endOf, entriesOf, loadsOf, roundsOf, keyOf, type Entry } from "./entries.ts";
import { MovePanel } from "./move-panel.tsx";
import { nameOf } from "./moves.ts";
import type { Moves } from "./use-moves.ts";

export function StepList({ day, moves }: { readonly day: CookDay; readonly moves: Moves }) {
  const { plan, refusal } = moves;
  const [moving, setMoving] = useState<string | null>(null);
  const focusLater = useFocusLater();
  const loads = loadsOf(plan);
  const entries = entriesOf(plan);
  // a step that was dragged and may not go there says why in its row
  const at = refusal && entries.some(({ steps }) => steps[0] && nameOf(steps[0]) === refusal.at) ? refusal.at : null;
  useEffect(() => setMoving((now) => at ?? now), [refusal?.n]);
  return (
    <section class="sec" aria-labelledby="steps-h">
      <h2 id="steps-h">The steps in order</h2>
      {moves.done !== null && <UndoLine done={moves.done} undo={moves.undo ?? undefined} of="it" />}
      {refusal && at === null && <p class="notice" role="alert">{refusal.words}</p>}
      <ol class="steps">
        {entries.map((entry) => {
          const name = entry.steps[0] ? nameOf(entry.steps[0]) : "";
          const id = `move-${name.replace(/[^a-z0-9]+/gi, "-")}`;
          return (
            <li key={name}>
              <span class="no">{entry.first === entry.last ? entry.first : `${entry.first}–${entry.last}`}</span>
              <span class="at">{clockAt(day, entry.steps[0]?.startMin ?? 0)}</span>
              <span class="letter">{entry.letter}</span>
              {entry.steps.length === 1 ? <One day={day} entry={entry} loads={loads} /> : <Loads day={day} entry={entry} loads={loads} />}
              {moves.open && moving !== name && (
                <button
                  type="button"
                  class="btn word move no-print"
                  id={`${id}-open`}
                  onClick={() => {
                    focusLater(`${id}-later`);
                    setMoving(name);
                  }}
                >
                  Move<span class="vh"> step {entry.first}</span>
                </button>
              )}
              {moves.open && moving === name && (
                <MovePanel
                  id={id}
                  entry={entry}
                  entries={entries}
                  plan={plan}
                  moves={moves}
                  focusLater={focusLater}
                  onClose={() => {
                    focusLater(`${id}-open`);
                    setMoving(null);
                  }}
                />
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

interface EntryProps {
  readonly day: CookDay;
  readonly entry: Entry;
  readonly loads: ReadonlyMap<string, number>;
}

function One({ day, entry: { steps }, loads }: EntryProps) {
  const [step] = steps;
  if (!step) return null;
  const of = loads.get(keyOf(step)) ?? 1;
  return (
    <p>
      <span class="what">
        {written(step.text)}
        {of > 1 ? `, load ${step.load} of ${of}` : ""}
      </span>
      <span class="quiet">{stepSentence(day, step)}</span>
    </p>
  );
}

/** Each step once, with the time of every load. */
function Loads({ day, entry, loads }: EntryProps) {
  const until = Math.max(...entry.steps.map(endOf));
  const rounds = roundsOf(entry);
  return (
    <div>
      {rounds.length > 1 && <p class="quiet">Load by load, until {clockAt(day, until)}:</p>}
      {rounds.map(({ text, steps }) => {
        const of = steps[0] ? (loads.get(keyOf(steps[0])) ?? steps.length) : steps.length;
        return (
          <p key={text} class={rounds.length > 1 ? "round" : undefined}>
            <span class="what">{written(text)}</span>
            <span class="quiet">
              {steps.length < of ? `${listed(steps.map(({ load }) => String(load)))} of ${of} loads, at ` : `${of} loads, at `}
              {listed(steps.map(({ startMin }) => clockAt(day, startMin)))}. {roundSentence(steps)}.
            </span>
          </p>
        );
      })}
    </div>
  );
}
