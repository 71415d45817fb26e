/** What is planned when: a row a week, which opens to its lines with why each is there and what it displaces. */
import { amount, count, inOurUnits, weekTitle } from "../../format.ts";
import { written } from "../../parts/written.ts";
import { givenAway, givenWords, lineWords, madeOf, sentence, titlesWords, together, weeksTitle, weekWords, type Plan, type PlanLineOf, type PlanWeek } from "./season-words.ts";

export function WeekRows({ plan }: { readonly plan: Plan }) {
  const first = plan.weeks.find(({ lines }) => lines.length > 0)?.week;
  return (
    <section class="sec" aria-labelledby="weeks-h">
      <h2 id="weeks-h">Week by week</h2>
      <ol class="rows season-weeks">
        {together(plan.weeks).flatMap(([week, ...more]) =>
          week ? [<li key={week.week}>{week.lines.length === 0 ? <Quiet week={week} until={more.at(-1) ?? null} /> : <Busy week={week} open={week.week === first} />}</li>] : [],
        )}
      </ol>
    </section>
  );
}

function Head({ week }: { readonly week: PlanWeek }) {
  return (
    <>
      <b class="when">{weekTitle(week.week, "short")}</b>
      {week.away && <span class="quiet"> away</span>}
    </>
  );
}

/** A week with nothing planned, or a run of them, says why in one line. */
function Quiet({ week, until }: { readonly week: PlanWeek; readonly until: PlanWeek | null }) {
  return (
    <p class="season-week">
      <span>{until ? <b class="when">{weeksTitle(week, until)}</b> : <Head week={week} />}</span>
      <span class="quiet">
        {written(sentence(week.text))} <Lost week={week} />
      </span>
    </p>
  );
}

function Busy({ week, open }: { readonly week: PlanWeek; readonly open: boolean }) {
  const agreed = week.lines.filter(({ agreedIds }) => agreedIds.length > 0).length;
  return (
    <details open={open}>
      <summary>
        <span class="season-week">
          <span>
            <Head week={week} />
          </span>
          <span>
            {titlesWords(week)}
            {agreed > 0 && <span class="quiet"> {agreed === week.lines.length ? "Agreed." : `${agreed} of ${week.lines.length} agreed.`}</span>} <Lost week={week} />
          </span>
        </span>
      </summary>
      <div class="season-lines">
        <p class="quiet">{inOurUnits(weekWords(week))}</p>
        <ul>
          {madeOf(week).map((line) => (
            <Line key={line.recipeId} line={line} />
          ))}
        </ul>
        {givenAway(week).length > 0 && <p>{written(givenWords(week))}</p>}
        <p>
          <a class="hitline" href={`/week?week=${week.week}`}>
            Open {weekTitle(week.week)}
          </a>
        </p>
      </div>
    </details>
  );
}

function Lost({ week: { lostGrams } }: { readonly week: PlanWeek }) {
  return lostGrams >= 50 ? <b class="over nowrap">{amount(lostGrams)} finds no use.</b> : null;
}

function Line({ line }: { readonly line: PlanLineOf }) {
  return (
    <li>
      <p>
        <i class="way">{line.way}</i>{" "}
        <a class="plain what" href={`/recipes/${line.recipeId}`}>
          {line.title}
        </a>
        {line.batches > 1 && <span>, {count(line.batches, "batch", "batches")}</span>}
        {line.agreedIds.length > 0 && <b> agreed</b>}
      </p>
      <p class="quiet">{written(sentence(lineWords(line)))}</p>
      <p>
        {written(line.why)} {line.displaces !== undefined && <span class="quiet">{written(line.displaces)}</span>}
      </p>
    </li>
  );
}

/** Weeks in which something finds no use all the same, and what one step more would save. */
export function Unanswered({ plan }: { readonly plan: Plan }) {
  if (plan.withoutAnswer.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="unanswered-h">
      <h2 id="unanswered-h">Weeks without an answer</h2>
      <ul class="rows">
        {plan.withoutAnswer.map(({ week, text, helps }) => (
          <li key={week}>
            <p>
              <b class="when">{weekTitle(week, "short")}</b> {written(text)}
            </p>
            {helps.length > 0 && (
              <ul class="helps">
                {helps.map((help) => (
                  <li key={help.limit}>{written(help.text)}</li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What may not be kept as it was meant, why, and the ways that are safe. */
export function Refused({ plan }: { readonly plan: Plan }) {
  if (plan.refused.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="refused-h">
      <h2 id="refused-h">Left out of the plan</h2>
      <ul class="rows">
        {plan.refused.map(({ recipeId, title, why, instead }) => (
          <li key={recipeId}>
            <p>
              <a class="plain what" href={`/recipes/${recipeId}`}>
                {title}
              </a>
            </p>
            <p>
              {written(sentence(why))}{" "}
              {instead.length > 0 && (
                <span>
                  Instead:{" "}
                  {instead.map((way, i) => (
                    <span key={way.recipeId}>
                      {i > 0 && ", "}
                      <a href={`/recipes/${way.recipeId}`}>{way.title}</a>
                    </span>
                  ))}
                  .
                </span>
              )}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
