/** The steps in the order they begin; the list carries all that the lanes show. */
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import { listed } from "../../format.ts";
import { written } from "../../parts/written.ts";
import { clockAt, roundSentence, stepSentence } from "./day-words.ts";
import { endOf, entriesOf, loadsOf, roundsOf, keyOf, type Entry } from "./entries.ts";

export function StepList({ day, plan }: { readonly day: CookDay; readonly plan: Timetable }) {
  if (plan.steps.length === 0) return null;
  const loads = loadsOf(plan);
  return (
    <section class="sec" aria-labelledby="steps-h">
      <h2 id="steps-h">The steps in order</h2>
      <ol class="steps">
        {entriesOf(plan).map((entry) => (
          <li key={entry.first}>
            <span class="no">{entry.first === entry.last ? entry.first : `${entry.first}–${entry.last}`}</span>
            <span class="at">{clockAt(day, entry.steps[0]?.startMin ?? 0)}</span>
            <span class="letter">{entry.letter}</span>
            {entry.steps.length === 1 ? <One day={day} entry={entry} loads={loads} /> : <Loads day={day} entry={entry} loads={loads} />}
          </li>
        ))}
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
