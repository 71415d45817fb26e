/** The page of one sowing: loads it, and acts. */
import { useState } from "preact/hooks";
import type { NewSowing, Sowing } from "#shared/contracts/sowings.ts";
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { asProblem } from "../../api/problem.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed, ProblemNote } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { Waiting } from "../../parts/waiting.tsx";
import { SowingSheet, type SowingData } from "./sowing-sheet.tsx";
import { sowingName } from "./sowing-words.ts";

export function SowingPage({ id }: { readonly id: string }) {
  const { load, again } = useLoad(`sowing ${id}`, (signal) => fetchSowing(id, signal));
  const [gone, setGone] = useState<Sowing | null>(null);
  const name = load.state === "ready" ? sowingName(load.value.sowing, new Map(load.value.crops.map((crop) => [crop.crop, crop]))) : null;
  useTitle(name);
  if (gone) return <Gone sowing={gone} name={name ?? gone.crop} onBack={() => setGone(null)} />;
  if (load.state === "waiting") return <Waiting name="Sowing" doing="Working out when this sowing will be ready." />;
  if (load.state === "failed") return load.problem.status === 404 ? <NotThere /> : <LoadFailed problem={load.problem} again={() => void again()} />;
  const remove = async (sowing: Sowing): Promise<void> => {
    await calls.removeSowing(sowing.id);
    setGone(sowing);
  };
  return <SowingSheet data={load.value} again={again} onRemove={remove} />;
}

async function fetchSowing(id: string, signal: AbortSignal): Promise<SowingData> {
  const [sowing, picks, beds, crops, health] = await Promise.all([calls.sowing(id, signal), calls.picks({ sowingId: id }, signal), calls.beds(signal), calls.crops(signal), calls.health(signal)]);
  return { sowing, picks, beds, crops, today: health.today };
}

function NotThere() {
  return (
    <>
      <Answer>This sowing is not in the book; it may have been removed.</Answer>
      <p class="acts">
        <a class="btn main" href="/beds">
          Go to the beds
        </a>
      </p>
    </>
  );
}

/** Removed, with the way back. */
function Gone({ sowing, name, onBack }: { readonly sowing: Sowing; readonly name: string; readonly onBack: () => void }) {
  const [problem, setProblem] = useState<string | null>(null);
  const putBack = async (): Promise<void> => {
    try {
      await calls.putSowing(sowing.id, bodyOf(sowing));
      await Promise.all(sowing.sightings.map(({ id, stage, seenOn }) => calls.putSighting(sowing.id, id, { stage, seenOn })));
      onBack();
    } catch (thrown) {
      setProblem(asProblem(thrown).message);
    }
  };
  return (
    <>
      <Answer>{name}: removed.</Answer>
      {problem !== null && <ProblemNote key={problem} lead={problem} />}
      <p class="acts">
        <a class="btn main" href="/beds">
          Go to the beds
        </a>
        <button type="button" class="btn" onClick={() => void putBack()}>
          Undo
        </button>
      </p>
    </>
  );
}

function bodyOf({ bedId, crop, variety, varietyDays, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note }: Sowing): NewSowing {
  return { bedId, crop, variety, varietyDays, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note };
}
