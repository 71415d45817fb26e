/** The calendar page from its data: sentence, plate, week page, table. No state of its own beyond what is open. */
import { useMemo, useState } from "preact/hooks";
import type { Calendar, CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import type { PlanLine } from "#shared/contracts/plan-lines.ts";
import type { IsoWeek } from "#shared/kernel/iso-week.ts";
import type { ApiProblem } from "../../api/problem.ts";
import { Answer } from "../../parts/answer.tsx";
import { Basis } from "../../parts/basis.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { narrow } from "../../screen.ts";
import { inOurUnits } from "../../format.ts";
import { units } from "../../units.ts";
import { Key } from "./key.tsx";
import { Missing, missingFirst } from "./missing.tsx";
import { Strip, WeekList } from "./week-list.tsx";
import { WeekPage, type WeekProps } from "./week-page.tsx";
import { WeekRule } from "./week-rule.tsx";
import { type CropNames, rowNames } from "../../parts/crop-names.ts";
import { stepWeek, yearFigures } from "./year.ts";
import { YearSheet } from "./year-sheet.tsx";
import { YearTable } from "./year-table.tsx";

export interface CalendarActs {
  readonly said: string;
  readonly problem: ApiProblem | null;
  readonly choose: (week: IsoWeek) => void;
  readonly add: (week: CalendarWeek, pairing: Pairing) => Promise<void>;
  readonly undo: (week: CalendarWeek, line: PlanLine) => Promise<void>;
  readonly cookDay: (week: CalendarWeek) => Promise<void>;
}

interface CalendarViewProps {
  readonly calendar: Calendar;
  readonly chosen: IsoWeek;
  readonly acts: CalendarActs;
}

export function CalendarView({ calendar, chosen, acts }: CalendarViewProps) {
  const figures = useMemo(() => yearFigures(calendar), [calendar]);
  const names = useMemo(() => rowNames(calendar.rows), [calendar]);
  // neither changes with the chosen week, and the table has two thousand cells
  const foot = useMemo(
    () => (
      <>
        <YearTable figures={figures} names={names} />
        <Basis basis={calendar.basis} notes={calendar.notes} />
      </>
    ),
    [calendar, figures, names, units.value],
  );
  const index = Math.max(0, calendar.weeks.findIndex((week) => week.week === chosen));
  const week = calendar.weeks[index];
  if (missingFirst(calendar) || !week) return <Missing calendar={calendar} />;
  const weekProps = (of: CalendarWeek): WeekProps & { readonly said: string } => ({
    week: of,
    names,
    seasonPlan: calendar.seasonPlan,
    past: of.ends < calendar.today,
    onAdd: (pairing) => void acts.add(of, pairing),
    onUndo: (line) => void acts.undo(of, line),
    onCookDay: () => void acts.cookDay(of),
    said: acts.said,
  });
  const chooseAt = (at: number): void => acts.choose(calendar.weeks[at]?.week ?? chosen);
  const year = chosen.slice(0, 4);
  return (
    <>
      <Answer>
        <Headline calendar={calendar} />
      </Answer>
      <Missing calendar={calendar} />
      <p class="vh" id="year-words">
        The year {year} in weeks. Each crop’s likely amount per week as a hill with its low to high edge, and above them the sum against what the household eats. The same figures stand in the
        table at the foot of the page.
      </p>
      {acts.problem && <ProblemNote key={acts.problem.message} lead={acts.problem.message} />}
      {narrow.value ? (
        <PhoneWeeks calendar={calendar} figures={figures} names={names} index={index} chooseAt={chooseAt} weekProps={weekProps} />
      ) : (
        <section aria-label="The year in weeks">
          <div class="year">
            <YearSheet calendar={calendar} figures={figures} chosen={index} onChoose={chooseAt} />
            <WeekRule figures={figures} chosen={index} onChoose={chooseAt} />
          </div>
          <Key />
          <WeekPage {...weekProps(week)} onStep={(weeks) => acts.choose(stepWeek(week.week, weeks))} />
        </section>
      )}
      {foot}
    </>
  );
}

/** The sentence with the part that is over in its colour. */
function Headline({ calendar }: { readonly calendar: Calendar }) {
  const [headline, headlineOver] = [inOurUnits(calendar.headline), inOurUnits(calendar.headlineOver)];
  const at = headlineOver === "" ? -1 : headline.indexOf(headlineOver);
  if (at < 0) return <>{headline}</>;
  return (
    <>
      {headline.slice(0, at)}
      <span class="over">{headlineOver}</span>
      {headline.slice(at + headlineOver.length)}
    </>
  );
}

interface PhoneWeeksProps {
  readonly calendar: Calendar;
  readonly figures: ReturnType<typeof yearFigures>;
  readonly names: CropNames;
  readonly index: number;
  readonly chooseAt: (index: number) => void;
  readonly weekProps: (week: CalendarWeek) => WeekProps & { readonly said: string };
}

function PhoneWeeks({ calendar, figures, names, index, chooseAt, weekProps }: PhoneWeeksProps) {
  const [shut, setShut] = useState(false);
  const open = (at: number | null): void => {
    setShut(at === null);
    if (at !== null) chooseAt(at);
  };
  return (
    <section aria-label="The weeks">
      <Strip calendar={calendar} figures={figures} />
      <h2 class="head">Week by week</h2>
      <WeekList figures={figures} names={names} open={shut ? null : index} onOpen={open} weekProps={weekProps} />
    </section>
  );
}
