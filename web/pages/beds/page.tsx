/** Beds: when will this sowing be ready, which bed is free when, what stands where. */
import { useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import type { NewSowing, Sowing } from "#shared/contracts/sowings.ts";
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import type { PageProps } from "../../pages.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { setQuery } from "../../router.ts";
import { BedsView, type BedsActs, type BedsData, type Taken } from "./view.tsx";
import "./beds.css";

export default function BedsPage({ query }: PageProps) {
  const { load, again } = useLoad("beds", fetchBeds);
  const acts = useActs(again, query.get("sowing"));
  if (load.state === "waiting") return <Waiting name="Beds" doing="Working out when each sowing will be ready." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <BedsView data={load.value} acts={acts} />;
}

async function fetchBeds(signal: AbortSignal): Promise<BedsData> {
  const [beds, sowings, crops, health] = await Promise.all([calls.beds(signal), calls.sowings(signal), calls.crops(signal), calls.health(signal)]);
  return { beds, sowings, crops, today: health.today };
}

function useActs(again: () => Promise<void>, open: string | null): BedsActs {
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
    open,
    taken,
    problem,
    openSowing: (id) => setQuery({ sowing: id }),
    addBed: async (bed: NewBed) => {
      await calls.putBed(newId(), bed);
      setTaken({ words: `${bed.name}: saved.` });
      await again();
    },
    removeBed: (bed: Bed) => take(bed.name, () => calls.removeBed(bed.id), () => calls.putBed(bed.id, bodyOfBed(bed))),
    removeSowing: (sowing: Sowing, words: string) =>
      take(
        words,
        () => calls.removeSowing(sowing.id),
        async () => {
          await calls.putSowing(sowing.id, bodyOfSowing(sowing));
          await Promise.all(sowing.sightings.map(({ id, stage, seenOn }) => calls.putSighting(sowing.id, id, { stage, seenOn })));
        },
      ),
  };
}

const bodyOfBed = ({ name, lengthM, widthM, cover }: Bed): NewBed => ({ name, lengthM, widthM, cover });

function bodyOfSowing({ bedId, crop, variety, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note }: Sowing): NewSowing {
  return { bedId, crop, variety, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note };
}
