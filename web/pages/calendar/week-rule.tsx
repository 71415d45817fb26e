/** Chooses a week: the browser's own slider laid over the week figures. One tab stop; arrows, Home and End. */
import { weekTitle } from "../../format.ts";
import { weekRuleWords } from "../../parts/week-words.ts";
import type { YearFigures } from "./year.ts";

export function WeekRule({ figures, chosen, onChoose }: { readonly figures: YearFigures; readonly chosen: number; readonly onChoose: (index: number) => void }) {
  const week = figures.weeks[chosen];
  return (
    <>
      <label class="vh" for="week-rule">
        Choose a week
      </label>
      <input
        class={`week-rule${figures.weeks.length === 53 ? " long-year" : ""}`}
        id="week-rule"
        type="range"
        min={1}
        max={figures.weeks.length}
        step={1}
        value={chosen + 1}
        aria-valuetext={week ? weekRuleWords(weekTitle(week.week), week) : undefined}
        onInput={(event) => onChoose(Number(event.currentTarget.value) - 1)}
      />
    </>
  );
}
