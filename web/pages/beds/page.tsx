/** Beds: when will this sowing be ready, which bed is free when, what stands where. */
import { useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import type { PageProps } from "../../pages.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { SowingPage } from "./sowing-page.tsx";
import { BedsView, type BedsActs, type BedsData, type Taken } from "./view.tsx";
import "./beds.css";

/** With an id in the address the page of that one sowing. */
export default function BedsPage({ id }: PageProps) {
  return id === undefined ? <AllBeds /> : <SowingPage id={id} />;
}

function AllBeds() {
  const { load, again } = useLoad("beds", fetchBeds);
  const acts = useActs(again);
  if (load.state === "waiting") return <Waiting name="Beds" doing="Working out when each sowing will be ready." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <BedsView data={load.value} acts={acts} />;
}

async function fetchBeds(signal: AbortSignal): Promise<BedsData> {
  const [beds, sowings, crops, health] = await Promise.all([calls.beds(signal), calls.sowings(signal), calls.crops(signal), calls.health(signal)]);
  return { beds, sowings, crops, today: health.today };
}

function useActs(again: () => Promise<void>): BedsActs {
  const [taken, setTaken] = useState<Taken | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const putBack = (words: string, put: () => Promise<unknown>) => async (): Promise<void> => {
    try {
      await put();
      setTaken({ words: `${words}: back again.` });
      await again();
    } catch (thrown) {
      setProblem(asProblem(thrown).message);
    }
  };
  const take = async (words: string, remove: () => Promise<void>, put: () => Promise<unknown>): Promise<void> => {
    await remove();
    setProblem(null);
    setTaken({ words: `${words}: removed.`, undo: () => void putBack(words, put)() });
    await again();
  };
  return {
    again,
    taken,
    problem,
    addBed: async (bed: NewBed) => {
      await calls.putBed(newId(), bed);
      setTaken({ words: `${bed.name}: saved.` });
      await again();
    },
    removeBed: (bed: Bed) => take(bed.name, () => calls.removeBed(bed.id), () => calls.putBed(bed.id, bodyOfBed(bed))),
  };
}

const bodyOfBed = ({ name, lengthM, widthM, cover }: Bed): NewBed => ({ name, lengthM, widthM, cover });
