/** What is wanted by a day, and what somebody asked for: each with its stock filling week by week towards what is asked. */
import { useState } from "preact/hooks";
import type { SuggestedTarget } from "#shared/contracts/stock-targets.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { daysBetween } from "#shared/kernel/local-date.ts";
import { putStockTarget, putWish, removeStockTarget, removeWish } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { day } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { written } from "../../parts/written.ts";
import { Strip } from "./strips.tsx";
import { levelField, levelPath } from "./week-axis.ts";
import { reachedWords, sentence, type Asked } from "./season-words.ts";
import { WantedForm } from "./wanted-form.tsx";
import { targetWords, wishWords, type Wanted } from "./wanted-words.ts";

interface WantedSectionProps {
  readonly wanted: readonly Wanted[];
  /** As the plan has them; by the id of the target or wish. */
  readonly asked: readonly Asked[];
  /** Mondays of the plan's weeks. */
  readonly starts: readonly LocalDate[];
  readonly suggested: readonly SuggestedTarget[];
  readonly recipes: readonly { readonly id: string; readonly title: string }[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
}

interface Done {
  readonly words: string;
  readonly undo?: () => Promise<void>;
}

export function WantedSection({ wanted, asked, starts, suggested, recipes, today, again }: WantedSectionProps) {
  const { failure, attempt } = useAttempts();
  const [done, setDone] = useState<Done | null>(null);
  const finish = async (next: Done): Promise<void> => {
    await again();
    setDone(next);
  };
  const takeOff = (one: Wanted): Promise<boolean> =>
    attempt(async () => {
      await (one.kind === "target" ? removeStockTarget(one.id) : removeWish(one.id));
      await finish({
        words: `${one.title}: no longer asked for.`,
        undo: async () => {
          await putAgain(one);
          await finish({ words: `${one.title}: asked for again.` });
        },
      });
    });
  const take = ({ recipeId, portions, by, title }: SuggestedTarget): Promise<boolean> =>
    attempt(async () => {
      const id = newId();
      await putStockTarget(id, { recipeId, portions, by });
      await finish({
        words: `${title}: wanted by ${day(by, today)}.`,
        undo: async () => {
          await removeStockTarget(id);
          await finish({ words: `${title}: taken off again.` });
        },
      });
    });
  return (
    <section class="sec" aria-labelledby="wanted-h">
      <h2 id="wanted-h">What is wanted</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      {done && <UndoLine done={done.words} undo={done.undo && (() => void attempt(done.undo as () => Promise<void>))} of={done.words} />}
      {wanted.length === 0 && <p class="under">Nothing is wanted by a day yet. Write down what you want in store by winter, and the plan makes room for it.</p>}
      <ul class="rows wanted">
        {wanted.map((one) => (
          <li key={one.id}>
            <One one={one} asked={asked.find(({ id }) => id === one.id) ?? null} starts={starts} today={today} />
            <button type="button" class="btn word no-print" onClick={() => void takeOff(one)}>
              Take it off<span class="vh">: {one.title}</span>
            </button>
          </li>
        ))}
      </ul>
      {suggested.length > 0 && (
        <>
          <h3 class="head">Going by last winter</h3>
          <ul class="rows deed-rows">
            {suggested.map((one) => (
              <li key={one.recipeId}>
                <p>
                  <b class="what">{one.title}</b> {written(one.text)}
                </p>
                <button type="button" class="btn no-print" onClick={() => void take(one)}>
                  Want {one.portions} again<span class="vh">: {one.title}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <WantedForm recipes={recipes} today={today} done={(words) => finish({ words })} />
    </section>
  );
}

function putAgain(one: Wanted): Promise<unknown> {
  const { recipeId, portions } = one;
  if (one.kind === "target") return putStockTarget(newId(), { recipeId, portions, by: one.by });
  return putWish(newId(), { recipeId, portions, ...(one.by === undefined ? {} : { by: one.by }), ...(one.from === undefined ? {} : { from: one.from }) });
}

function One({ one, asked, starts, today }: { readonly one: Wanted; readonly asked: Asked | null; readonly starts: readonly LocalDate[]; readonly today: LocalDate }) {
  const plainly = one.kind === "target" ? targetWords(one, today) : wishWords(one, today);
  // a wish is eaten when it is made: it has no stock that fills
  if (asked === null || starts.length === 0 || one.kind === "wish")
    return (
      <p>
        <b class="what">{one.title}</b> {sentence(plainly)} {asked !== null && reachedWords(asked)}
      </p>
    );
  const most = Math.max(asked.portions, ...asked.byWeek.map(({ portions }) => portions)) * 1.05;
  const due = asked.by === null ? null : daysBetween(starts[0] as string, asked.by) / 7;
  return (
    <Strip id={`asked-${one.id}`} title={one.title} words={`${sentence(plainly)} ${reachedWords(asked)}`} starts={starts} rem={3.5} most={most} levels={[{ value: asked.portions, words: String(asked.portions) }]}>
      {(axis, height) => (
        <>
          <path d={levelField(asked.byWeek.map(({ portions }) => portions), most, height, axis)} class={asked.missingPortions > 0 ? "k-edge" : "k-hill"} />
          <path d={levelPath(starts.map(() => asked.portions), most, height, axis)} class="k-ink k-dash k-nofill" />
          {due !== null && due >= 0 && due <= axis.weeks && <line x1={axis.x(due)} x2={axis.x(due)} y1={0} y2={height} class={asked.missingPortions > 0 ? "k-late" : "k-today"} />}
        </>
      )}
    </Strip>
  );
}

