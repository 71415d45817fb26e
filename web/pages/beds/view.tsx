/** The beds page from its data. */
import { useMemo, useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { Answer } from "../../parts/answer.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { DottedPlate } from "../../parts/waiting.tsx";
import { narrow } from "../../screen.ts";
import { units } from "../../units.ts";
import { BedForm } from "./bed-form.tsx";
import { BedList } from "./bed-list.tsx";
import { BedStrip } from "./bed-strip.tsx";
import { standOf, type Stand } from "./lanes.ts";
import { SowForTable } from "./sow-for-table.tsx";
import { SowingSlip } from "./sowing-slip.tsx";
import { sowingName } from "./sowing-words.ts";
import { usePainted } from "./use-painted.ts";
import type { Preview } from "./use-preview.ts";

export interface BedsData {
  readonly beds: readonly Bed[];
  readonly sowings: readonly Sowing[];
  readonly crops: readonly Crop[];
  readonly today: LocalDate;
}

/** What was done last, and how to take it back. */
export interface Taken {
  readonly words: string;
  readonly undo?: () => void;
}

export interface BedsActs {
  readonly again: () => Promise<void>;
  readonly taken: Taken | null;
  readonly problem: string | null;
  readonly addBed: (bed: NewBed) => Promise<void>;
  readonly removeBed: (bed: Bed) => Promise<void>;
}

export function BedsView({ data, acts }: { readonly data: BedsData; readonly acts: BedsActs }) {
  if (data.beds.length === 0) return <NoBeds acts={acts} />;
  return <WithBeds data={data} acts={acts} />;
}

function NoBeds({ acts }: { readonly acts: BedsActs }) {
  return (
    <>
      <Answer>No bed is laid out yet, so nothing can be sown in one.</Answer>
      {acts.taken && <UndoLine done={acts.taken.words} of={acts.taken.words} undo={acts.taken.undo} />}
      <DottedPlate />
      <p class="under">A name, a length and a width are enough. The sowings and their dates will stand here.</p>
      <div class="narrow-form">
        <BedForm form="bed-new" onSave={acts.addBed} saveWords="Save the bed" solid />
      </div>
    </>
  );
}

function WithBeds({ data, acts }: { readonly data: BedsData; readonly acts: BedsActs }) {
  const { beds, sowings, crops, today } = data;
  const [preview, setPreview] = useState<Preview | null>(null);
  const painted = usePainted();
  const byName = useMemo(() => new Map(crops.map((crop) => [crop.crop, crop])), [crops]);
  const stands = useMemo(() => sowings.map((sowing) => standOf(sowing, sowingName({ ...sowing, variety: undefined }, byName), sowing.forecast)), [sowings, byName]);
  // the list is long and has nothing to do with what is being typed above it
  const list = useMemo(
    () => (
      <BedList
        beds={beds}
        sowings={sowings}
        crops={crops}
        today={today}
        again={acts.again}
        onRemoveBed={acts.removeBed}
      />
    ),
    [data, units.value],
  );
  const frost = preview?.answer.forecast.frost ?? sowings[0]?.forecast.frost ?? null;
  return (
    <>
      <SowingSlip crops={crops} beds={beds} sowings={sowings} today={today} again={acts.again} onPreview={setPreview} />
      <section class="sec" aria-labelledby="beds-h">
        <h2 id="beds-h">Which bed is free when</h2>
        {!painted && <DottedPlate height={128} />}
        {painted && !narrow.value && <BedStrip beds={beds} stands={withPlanned(stands, preview, byName)} today={today} frost={frost} />}
        {acts.taken && <UndoLine done={acts.taken.words} of={acts.taken.words} undo={acts.taken.undo} />}
        {acts.problem !== null && <ProblemNote key={acts.problem} lead={acts.problem} />}
        {painted && list}
        <SowForTable crops={crops} today={today} />
        <details class="add-bed">
          <summary class="word">Add a bed</summary>
          <BedForm form="bed-new" onSave={acts.addBed} saveWords="Save the bed" />
        </details>
      </section>
    </>
  );
}

function withPlanned(stands: readonly Stand[], preview: Preview | null, crops: ReadonlyMap<string, Crop>): Stand[] {
  const body = preview?.read.body;
  if (!preview || !body) return [...stands];
  const name = sowingName({ crop: body.crop } as Sowing, crops);
  return [...stands, standOf({ id: "planned", ...body }, name, preview.answer.forecast, true)];
}
