/** What to do with the week: what is agreed, then the ideas that fit, best first, each with why. One press agrees, one takes back. */
import { useState } from "preact/hooks";
import type { CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import { count, inOurUnits, length, made, weekName } from "../../format.ts";
import type { CropNames } from "../../parts/crop-names.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { TakeCare } from "../../parts/take-care.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { usesWords } from "../../parts/week-words.ts";
import type { Agreeing } from "./use-agreeing.ts";

/** The best ones in sight, the others one press away. */
const SHOWN = 6;

interface IdeasProps {
  readonly week: CalendarWeek;
  readonly names: CropNames;
  readonly agreeing: Agreeing;
}

export function Ideas({ week, names, agreeing }: IdeasProps) {
  const [more, setMore] = useState(false);
  const { failure, done, short } = agreeing;
  const fromPlan = week.pairings.filter(({ planned }) => planned);
  const shown = more ? week.pairings : week.pairings.slice(0, Math.max(SHOWN, fromPlan.length));
  return (
    <section class="sec" aria-labelledby="ways-h">
      <h2 id="ways-h" tabIndex={-1}>
        What to do with it
      </h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      {short && (
        <p class="acts">
          <button type="button" class="btn" onClick={() => void agreeing.agree(short, true)}>
            Agree, and buy what is missing
          </button>
        </p>
      )}
      {done && <UndoLine done={done.words} undo={done.ids.length === 0 ? undefined : () => void agreeing.takeBack(done.ids, "Taken back; nothing is reserved for it any more.")} of={done.words} />}
      <AgreedLines week={week} names={names} agreeing={agreeing} />
      {fromPlan.length > 1 && (
        <p class="acts">
          <button type="button" class={`btn${week.planned.length === 0 ? " main" : ""}`} onClick={() => void agreeing.agree(fromPlan)}>
            Agree on all {fromPlan.length} of the season’s plan
          </button>
        </p>
      )}
      {week.pairings.length > 0 && (
        <>
          <h3 class="head">Ideas that fit</h3>
          <ul class="rows ideas">
            {shown.map((pairing) => (
              <Idea key={pairing.recipeId} pairing={pairing} week={week} names={names} agree={() => void agreeing.agree([pairing])} />
            ))}
          </ul>
          {shown.length < week.pairings.length && (
            <p class="acts">
              <button type="button" class="btn word" onClick={() => setMore(true)}>
                {count(week.pairings.length - shown.length, "more way", "more ways")}
              </button>
            </p>
          )}
          <TakeCare week={week} shown={shown.length} />
        </>
      )}
      {week.pairings.length === 0 && week.planned.length === 0 && <p class="under">Nothing has to be done with this week’s produce.</p>}
    </section>
  );
}

function AgreedLines({ week, names, agreeing }: IdeasProps) {
  if (week.planned.length === 0) return null;
  return (
    <>
      <h3 class="head">Agreed</h3>
      <ul class="rows deed-rows agreed">
        {week.planned.map((line) => (
          <li key={line.id}>
            <p>
              <i class="way">{line.way}</i>{" "}
              <a class="plain what" href={`/recipes/${line.recipeId}`}>
                {line.title}
              </a>
              , {count(line.batches, "batch", "batches")}. <span class="quiet">{usesWords(line.uses, names)}</span>
            </p>
            <button type="button" class="btn word no-print" onClick={() => void agreeing.takeBack([line.id], `${line.title}: taken back.`)}>
              Undo<span class="vh">: take {line.title} out of {weekName(week.week)}</span>
            </button>
          </li>
        ))}
      </ul>
      {week.planned.length > 1 && (
        <p class="acts">
          <button type="button" class="btn word" onClick={() => void agreeing.takeAllBack()}>
            Take the whole week back
          </button>
        </p>
      )}
    </>
  );
}

function Idea({ pairing, week, names, agree }: { readonly pairing: Pairing; readonly week: CalendarWeek; readonly names: CropNames; readonly agree: () => void }) {
  const parts = pairing.parts.map(({ title, inStore }) => (inStore === undefined ? `${title} is made for it as well.` : `${title}: ${inStore}.`)).join(" ");
  return (
    <li>
      <p>
        <i class="way">{pairing.way}</i>{" "}
        <a class="plain what" href={`/recipes/${pairing.recipeId}`}>
          {pairing.title}
        </a>
        {pairing.planned && <b> in the season’s plan</b>}
      </p>
      <p class="quiet">
        Makes {made(pairing.makes)}
        {pairing.handsOnMin > 0 && `; hands on ${length(pairing.handsOnMin)}`}. {usesWords(pairing.uses, names)} {parts}
      </p>
      <p>{inOurUnits(pairing.why)}</p>
      <button type="button" class="btn no-print" onClick={agree}>
        Agree<span class="vh"> on {pairing.title} for {weekName(week.week)}</span>
      </button>
    </li>
  );
}
