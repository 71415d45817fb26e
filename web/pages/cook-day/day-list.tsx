/** The cook days that are planned, and the frame of a new one. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay } from "#shared/contracts/cook-days.ts";
import type { Household } from "#shared/contracts/household.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { addDays } from "#shared/kernel/local-date.ts";
import { cookDay, putCookDay } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { day as dayName, lower } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";
import { ChooseDay } from "./choose-day.tsx";
import { bodyOf, withDish } from "./day-body.ts";
import { DayForm, type Failed } from "./day-form.tsx";
import { fieldAt, labelAt, type DayFrame } from "./day-frame.ts";
import { dishesOf, weekdayOf } from "./day-words.ts";

interface DayListProps {
  readonly days: readonly CookDay[];
  readonly home: Household;
  /** The recipe that a day is looked for. */
  readonly asked: Recipe | null;
  readonly today: string;
}

export function DayList({ days, home, asked, today }: DayListProps) {
  const [id] = useState(newId);
  const { failure, say, attempt } = useAttempts();
  const coming = days.filter((one) => one.on >= today).sort((a, b) => a.on.localeCompare(b.on));
  const past = days.filter((one) => one.on < today).sort((a, b) => b.on.localeCompare(a.on));
  const plan = async (body: NewCookDay): Promise<Failed | null> => {
    try {
      await putCookDay(id, body);
      goTo(`/cook-day/${id}`);
      return null;
    } catch (thrown) {
      const problem = asProblem(thrown);
      return { lead: problem.message, faults: problem.fields.map(({ path, message }) => ({ field: fieldAt(path.split(".")), text: `${labelAt(fieldAt(path.split(".")))}: ${message}` })) };
    }
  };
  const usual: DayFrame = { on: saturdayAfter(today), startsAt: "09:00", cooks: home.cooks, kitchen: home.kitchen, unavailable: [] };
  const planThese = async (dishes: NewCookDay["dishes"]): Promise<void> => {
    const refused = await plan({ on: usual.on, startsAt: usual.startsAt, cooks: usual.cooks, kitchen: usual.kitchen, dishes });
    if (refused) say(refused.lead);
  };
  const putInto = (dayId: string, recipe: Recipe): Promise<boolean> =>
    attempt(async () => {
      await putCookDay(dayId, withDish(bodyOf(await cookDay(dayId)), recipe.id));
      goTo(`/cook-day/${dayId}`);
    });
  return (
    <>
      <Answer>{listSentence(coming[0], asked, today)}</Answer>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      <DaysOf title="Coming" days={coming} today={today} asked={asked} onPut={(dayId, recipe) => void putInto(dayId, recipe)} />
      {asked === null && <ChooseDay today={today} onPlan={(dishes) => void planThese(dishes)} />}
      <section class="sec" aria-labelledby="new-day">
        <h2 id="new-day">{asked && coming.length > 0 ? "Or plan another day" : "Plan a cook day"}</h2>
        <DayForm
          frame={usual}
          today={today}
          dishes={asked ? [{ recipeId: asked.id, batches: 1 }] : []}
          button="Plan this day"
          solid
          onSave={plan}
        />
      </section>
      <DaysOf title="Past" days={past} today={today} asked={null} />
    </>
  );
}

function listSentence(next: CookDay | undefined, asked: Recipe | null, today: string): string {
  if (asked) return `On which day shall ${lower(asked.title)} be cooked?`;
  if (!next) return "No cook day is planned. Choose a day, or start one from a week of the calendar.";
  return `The next cook day is ${weekdayOf(next.on)}, ${dayName(next.on, today)}, from ${next.startsAt}.`;
}

interface DaysOfProps {
  readonly title: string;
  readonly days: readonly CookDay[];
  readonly today: string;
  readonly asked: Recipe | null;
  readonly onPut?: (dayId: string, recipe: Recipe) => void;
}

function DaysOf({ title, days, today, asked, onPut }: DaysOfProps) {
  if (days.length === 0) return null;
  return (
    <section class="sec" aria-labelledby={`days-${title}`}>
      <h2 id={`days-${title}`}>{title}</h2>
      <ul class="rows days">
        {days.map((one) => {
          const when = `${weekdayOf(one.on)}, ${dayName(one.on, today)}`;
          return (
            <li key={one.id}>
              <p>
                <a class="what" href={`/cook-day/${one.id}`}>
                  {when}, {one.startsAt}
                  {one.title ? `: ${lower(one.title)}` : ""}
                </a>
                <span class="quiet">{dishesOf(one)}</span>
              </p>
              {asked && onPut && (
                <button type="button" class="btn" onClick={() => onPut(one.id, asked)}>
                  Put it in<span class="vh"> on {when}</span>
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The coming Saturday; today when it is one. */
function saturdayAfter(today: string): string {
  for (let i = 0; ; i++) {
    const date = addDays(today, i);
    if (weekdayOf(date) === "Saturday") return date;
  }
}
