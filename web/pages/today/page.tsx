/** Today: what to pick, what is urgent, what to sow, what to cook. A pick is logged here in a few seconds. */
import { useState } from "preact/hooks";
import { removePick, today } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { asProblem } from "../../api/problem.ts";
import { inOurUnits, measured } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed, ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { OtherWork } from "./other-work.tsx";
import { PickRows } from "./pick-rows.tsx";
import { Urgent } from "./urgent.tsx";
import { PickSheet, type LoggedPick } from "./pick-sheet.tsx";
import "./today.css";

export default function TodayPage() {
  const { load, again } = useLoad("today", today);
  const [open, setOpen] = useState<{ readonly first: string | null } | null>(null);
  const [logged, setLogged] = useState<LoggedPick | null>(null);
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string } | null>(null);
  if (load.state === "waiting") return <Waiting name="Today" doing="Looking through the beds for what is ready." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const it = load.value;
  const close = async (pick: LoggedPick | null): Promise<void> => {
    setOpen(null);
    if (!pick) return;
    setLogged(pick);
    setFailed(null);
    await again();
  };
  const undo = async (pick: LoggedPick): Promise<void> => {
    try {
      await removePick(pick.id);
      setLogged(null);
      setFailed(null);
      await again();
    } catch (thrown) {
      setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead: asProblem(thrown).message }));
    }
  };
  return (
    <div class="today">
      <Answer>{inOurUnits(it.headline)}</Answer>
      <Urgent urgent={it.urgent} />
      {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
      {logged && <UndoLine key={logged.id} done={`${logged.name}, ${measured(logged.grams)} picked today. Saved.`} undo={() => void undo(logged)} of={logged.name} />}
      <div class="today-cols">
        <PickRows picks={it.pick} onOpen={(first) => setOpen({ first })} />
        <div>
          <OtherWork it={it} />
        </div>
      </div>
      {it.pick.length > 0 && (
        <div class="dock">
          <button type="button" class="btn main garden" onClick={() => setOpen({ first: null })}>
            Log a pick
          </button>
        </div>
      )}
      {open !== null && <PickSheet picks={it.pick} first={open.first} today={it.today} onClose={(pick) => void close(pick)} />}
    </div>
  );
}
