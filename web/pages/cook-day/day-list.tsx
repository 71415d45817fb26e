/** The cook days that are planned, and the frame of a new one. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay } from "#shared/contracts/cook-days.ts";
import type { Household } from "#shared/contracts/household.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { addDays } from "#shared/kernel/local-date.ts";
import { putCookDay } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { day as dayName, listed, lower } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { goTo } from "../../router.ts";
import { DayForm } from "./day-form.tsx";
import { weekdayOf } from "./day-words.ts";

interface DayListProps {
  readonly days: readonly CookDay[];
  readonly home: Household;
  readonly all: readonly Recipe[];
  readonly today: string;
  readonly recipeId: string | null;
}

export function DayList({ days, home, all, today, recipeId }: DayListProps) {
  const [id] = useState(newId);
  const asked = all.find((recipe) => recipe.id === recipeId);
  const coming = days.filter((one) => one.on >= today).sort((a, b) => a.on.localeCompare(b.on));
  const past = days.filter((one) => one.on < today).sort((a, b) => b.on.localeCompare(a.on));
  const save = async (body: NewCookDay) => {
    try {
      await putCookDay(id, body);
      goTo(`/cook-day/${id}`);
      return null;
    } catch (thrown) {
      return { lead: asProblem(thrown).message, faults: [] };
    }
  };
  const next = coming[0];
  return (
    <>
      <Answer>{asked ? `On which day shall ${lower(asked.title)} be cooked?` : next ? `The next cook day is ${weekdayOf(next.on)}, ${dayName(next.on, today)}: ${dishesOf(next)}.` : "No cook day is planned. Choose a day, or start one from a week of the calendar."}</Answer>
      <DaysOf title="Coming" days={coming} today={today} />
      <section class="sec" aria-labelledby="new-day">
        <h2 id="new-day">Plan a cook day</h2>
        <DayForm
          frame={{ on: saturdayAfter(today), startsAt: "09:00", cooks: home.cooks, kitchen: home.kitchen }}
          today={today}
          dishes={asked ? [{ recipeId: asked.id, batches: 1 }] : []}
          button="Plan this day"
          onSave={save}
        />
      </section>
      <DaysOf title="Past" days={past} today={today} />
    </>
  );
}

function DaysOf({ title, days, today }: { readonly title: string; readonly days: readonly CookDay[]; readonly today: string }) {
  if (days.length === 0) return null;
  return (
    <section class="sec" aria-labelledby={`days-${title}`}>
      <h2 id={`days-${title}`}>{title}</h2>
      <ul class="rows">
        {days.map((one) => (
          <li key={one.id}>
            <a class="what" href={`/cook-day/${one.id}`}>
              {weekdayOf(one.on)}, {dayName(one.on, today)}, {one.startsAt}
            </a>
            <p class="quiet">{dishesOf(one)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

const dishesOf = (one: CookDay): string => (one.dishes.length === 0 ? "nothing chosen yet" : listed(one.dishes.map(({ title }) => lower(title))));

/** The coming Saturday; today when it is one. */
function saturdayAfter(today: string): string {
  for (let i = 0; ; i++) {
    const date = addDays(today, i);
    if (weekdayOf(date) === "Saturday") return date;
  }
}
