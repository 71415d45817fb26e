/** What to do with a week's produce: what is in the plan, then what is suggested. One press adds, one takes back. */
import { useState } from "preact/hooks";
import type { CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import type { PlanLine } from "#shared/contracts/plan-lines.ts";
import { WAYS } from "#shared/kernel/way.ts";
import { count, inOurUnits, made, weekName } from "../../format.ts";
import { TakeCare } from "../../parts/take-care.tsx";
import { usesWords } from "../../parts/week-words.ts";
import { usesGoWithoutSaying, whyBesideRow } from "./why-words.ts";
import type { CropNames } from "../../parts/crop-names.ts";

/** The best ones in sight, the others one press away. */
const SHOWN = 8;

export interface WaysProps {
  readonly week: CalendarWeek;
  readonly names: CropNames;
  readonly onAdd: (pairing: Pairing) => void;
  readonly onUndo: (line: PlanLine) => void;
}

const order = (way: Pairing["way"]): number => WAYS.indexOf(way);

export function Ways({ week, names, onAdd, onUndo }: WaysProps) {
  const planned = [...week.planned].sort((a, b) => order(a.way) - order(b.way));
  const [more, setMore] = useState(false);
  const fromPlan = week.pairings.filter((pairing) => pairing.planned);
  const rest = week.pairings.filter((pairing) => !pairing.planned);
  const suggested = (pairing: Pairing) => <Suggested key={pairing.recipeId} pairing={pairing} week={week} names={names} onAdd={onAdd} />;
  if (planned.length === 0 && week.pairings.length === 0) return <p class="quiet">Nothing has to be done with this week’s produce.</p>;
  return (
    <div class="ways">
      <div class="way-row way-head" aria-hidden="true">
        <span>Way</span>
        <span>What, and what it uses</span>
        <span>Makes</span>
        <span class="hands">Hands on</span>
        <span />
      </div>
      {planned.map((line) => (
        <Planned key={line.id} line={line} week={week} names={names} onUndo={onUndo} />
      ))}
      {fromPlan.map(suggested)}
      {fromPlan.length > 0 && rest.length > 0 && <h4 class="way-else">Or instead</h4>}
      {rest.slice(0, SHOWN).map(suggested)}
      {rest.length > SHOWN && (
        <details class="more-ways" open={more} onToggle={(event) => setMore(event.currentTarget instanceof HTMLDetailsElement && event.currentTarget.open)}>
          <summary class="word">{count(rest.length - SHOWN, "more way", "more ways")}</summary>
          {more && rest.slice(SHOWN).map(suggested)}
        </details>
      )}
      <TakeCare week={week} shown={more ? week.pairings.length : fromPlan.length + SHOWN} />
    </div>
  );
}

function Planned({ line, week, names, onUndo }: { readonly line: PlanLine; readonly week: CalendarWeek } & Pick<WaysProps, "names" | "onUndo">) {
  return (
    <div class="way-row row">
      <span class="way">
        {line.way} <span class="in-plan">in plan</span>
      </span>
      <h4 class="what">
        <a class="plain" href={`/recipes/${line.recipeId}`}>
          {line.title}
        </a>
      </h4>
      <span class="makes">{count(line.batches, "batch", "batches")}</span>
      <span class="hands" />
      <p class="why">
        <span class="uses">{usesWords(line.uses, names)}</span>
      </p>
      <button class="btn word" type="button" id={`undo-${line.id}`} onClick={() => onUndo(line)}>
        Undo<span class="vh">: take {line.title} out of the plan for {weekName(week.week)}</span>
      </button>
    </div>
  );
}

function Suggested({ pairing, week, names, onAdd }: { readonly pairing: Pairing; readonly week: CalendarWeek } & Pick<WaysProps, "names" | "onAdd">) {
  return (
    <div class="way-row row">
      <span class="way">
        {pairing.way} {pairing.planned && <span class="in-plan">season’s plan</span>}
      </span>
      <h4 class="what">
        <a class="plain" href={`/recipes/${pairing.recipeId}`}>
          {pairing.title}
        </a>
      </h4>
      <span class="makes">{made(pairing.makes)}</span>
      <span class="hands">
        {pairing.handsOnMin > 0 && (
          <>
            {pairing.handsOnMin}
            {"\u00a0"}min<span class="phone"> hands on</span>
          </>
        )}
      </span>
      <p class="why">
        {!usesGoWithoutSaying(pairing) && <span class="uses">{usesWords(pairing.uses, names)} </span>}
        {inOurUnits(whyBesideRow(pairing))}
        {pairing.parts.map((part) => (
          <span class="part-of" key={part.recipeId}>
            {" "}
            With <a href={`/recipes/${part.recipeId}`}>{part.title}</a>
            {part.inStore === undefined ? ", which has to be made first." : `: ${inOurUnits(part.inStore)}`}
          </span>
        ))}
      </p>
      <button class="btn word" type="button" id={`add-${week.week}-${pairing.recipeId}`} onClick={() => onAdd(pairing)}>
        Add<span class="vh"> {pairing.title} to {weekName(week.week)}</span>
      </button>
    </div>
  );
}
