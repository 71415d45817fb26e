/** The season on a page from its data: sentence, how sure, plate, weeks, what is wanted, how it fares. */
import type { StandingSeason } from "#shared/contracts/season-plan.ts";
import type { SuggestedTarget } from "#shared/contracts/stock-targets.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { inOurUnits } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { Basis } from "../../parts/basis.tsx";
import { Courses } from "./courses.tsx";
import { PlanAnew } from "./planning.tsx";
import { sureWords, type Plan } from "./season-words.ts";
import { SeasonPlate } from "./strips.tsx";
import type { Planning } from "./use-planning.ts";
import { Refused, Unanswered, WeekRows } from "./week-rows.tsx";
import { WantedSection } from "./wanted.tsx";
import type { Wanted } from "./wanted-words.ts";

interface SeasonViewProps {
  readonly standing: StandingSeason;
  readonly planning: Planning;
  readonly wanted: readonly Wanted[];
  readonly suggested: readonly SuggestedTarget[];
  readonly recipes: readonly { readonly id: string; readonly title: string }[];
  readonly today: LocalDate;
  readonly thisWeek: string;
  readonly again: () => Promise<void>;
}

export function SeasonView({ standing, planning, wanted, suggested, recipes, today, thisWeek, again }: SeasonViewProps) {
  // while a first plan is worked out, the simple rule's stands in its place
  const plan: Plan | null = standing.plan ?? planning.job?.plan ?? null;
  return (
    <>
      <Answer>{plan ? inOurUnits(plan.headline) : "The season has not been planned yet."}</Answer>
      {plan ? <p class="under">{sureWords(plan)}</p> : <p class="under">The plan says which week’s glut is frozen, bottled, dried or cooked, within your hours, jars and freezer, and fills what you want in store.</p>}
      {plan && standing.plan && !standing.upToDate && !planning.working && <p class="notice">Something it rests on has changed since: the forecast, the larder, what is wanted or what is agreed. <a href="#plan-weeks">Plan anew</a></p>}
      {plan?.clashes.map((text) => (
        <p class="notice" key={text}>
          {inOurUnits(text)}
        </p>
      ))}
      {plan && plan.weeks.length > 0 && <SeasonPlate plan={plan} />}
      <PlanAnew planning={planning} from={thisWeek} weeks={plan?.weeks.length ?? null} anew={standing.plan !== null} />
      {plan && <WeekRows plan={plan} />}
      {plan && <Unanswered plan={plan} />}
      <WantedSection wanted={wanted} asked={plan?.asked ?? []} starts={plan?.weeks.map(({ starts }) => starts) ?? []} suggested={suggested} recipes={recipes} today={today} again={again} />
      {plan && <Courses plan={plan} />}
      {plan && <Refused plan={plan} />}
      {plan && <Basis basis={plan.basis} notes={plan.notes} />}
    </>
  );
}
