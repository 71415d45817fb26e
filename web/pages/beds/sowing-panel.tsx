/** One sowing, opened: what is expected of it, what was seen and picked, and how to change or remove it. */
import { useState } from "preact/hooks";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { DateDots } from "../../parts/date-dots.tsx";
import { Basis } from "../../parts/basis.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { PicksOf } from "./picks.tsx";
import { Sightings } from "./sightings.tsx";
import { SowingEdit } from "./sowing-edit.tsx";
import { forecastSentences } from "./sowing-words.ts";

interface SowingPanelProps {
  readonly sowing: Sowing;
  readonly crops: readonly Crop[];
  readonly beds: readonly Bed[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
  readonly onRemove: (sowing: Sowing) => Promise<void>;
}

export function SowingPanel({ sowing, crops, beds, today, again, onRemove }: SowingPanelProps) {
  const [editing, setEditing] = useState<Sowing | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const attempt = async (act: () => Promise<void>): Promise<void> => {
    try {
      setProblem(null);
      await act();
    } catch (thrown) {
      setProblem(asProblem(thrown).message);
    }
  };
  if (editing) {
    const done = (changed: boolean): void => {
      setEditing(null);
      if (changed) void again();
    };
    return <SowingEdit sowing={editing} crops={crops} beds={beds} today={today} onDone={done} />;
  }
  const { forecast } = sowing;
  const wordsId = `words-${sowing.id}`;
  const ahead = forecast.firstPick !== null && forecast.firstPick.high > today;
  return (
    <div class="panel">
      {sowing.fits.map((line) => (
        <p class="notice" key={line}>
          <b class="over">Short of room:</b> {line}
        </p>
      ))}
      <p id={wordsId}>{forecastSentences(sowing, today).join(" ")}</p>
      {sowing.note && <p class="quiet">Note: {sowing.note}</p>}
      {ahead && (
        <div class="panel-dots">
          <DateDots dates={forecast.dots} start={sowing.plantedOutOn ?? sowing.sownOn ?? null} startWord={sowing.plantedOutOn ? "planted out" : "sown"} frost={forecast.frost.firstAutumn} wordsId={wordsId} small />
        </div>
      )}
      {forecast.notes.length > 0 && <p class="say">{forecast.notes.join(" ")}</p>}
      <div class="panel-parts">
        <PicksOf sowing={sowing} today={today} again={again} />
        <Sightings sowing={sowing} today={today} again={again} />
      </div>
      {problem !== null && <ProblemNote key={problem} lead={problem} />}
      <p class="acts">
        <button type="button" class="btn" onClick={() => void attempt(async () => setEditing(await calls.sowing(sowing.id)))}>
          Change this sowing
        </button>
        <button type="button" class="btn word" onClick={() => void attempt(() => onRemove(sowing))}>
          Remove it
        </button>
      </p>
      <Basis basis={forecast.basis} notes={[]} />
    </div>
  );
}
