/** The beds with what stands in them; a sowing opens where it stands. */
import { useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { area, lower, plain } from "../../format.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { BedForm, coverWords } from "./bed-form.tsx";
import { amountWords } from "./slip.ts";
import { SowingPanel } from "./sowing-panel.tsx";
import { pickingWords, sowingName, startWords } from "./sowing-words.ts";

export interface BedListProps {
  readonly beds: readonly Bed[];
  readonly sowings: readonly Sowing[];
  readonly crops: readonly Crop[];
  readonly today: LocalDate;
  readonly open: string | null;
  readonly onOpen: (sowingId: string | null) => void;
  readonly again: () => Promise<void>;
  readonly onRemoveSowing: (sowing: Sowing) => Promise<void>;
  readonly onRemoveBed: (bed: Bed) => Promise<void>;
}

export function BedList(props: BedListProps) {
  return (
    <ul class="rows bedlist">
      {props.beds.map((bed) => (
        <li key={bed.id}>
          <BedRow bed={bed} {...props} />
        </li>
      ))}
    </ul>
  );
}

function BedRow({ bed, sowings, crops, ...props }: BedListProps & { readonly bed: Bed }) {
  const byName = new Map(crops.map((crop) => [crop.crop, crop]));
  const standing = sowings.filter(({ bedId }) => bedId === bed.id).sort((a, b) => (a.plantedOutOn ?? a.sownOn ?? "").localeCompare(b.plantedOutOn ?? b.sownOn ?? ""));
  return (
    <>
      <div>
        <h3 class="what">{bed.name}</h3>
        <p class="quiet">
          {bed.freeM2 > 0 ? (
            <>
              <b>{area(bed.freeM2)} free now</b> of {area(bed.areaM2)}
            </>
          ) : (
            `full, ${area(bed.areaM2)}`
          )}
          {bed.cover !== "open" && `, ${lower(coverWords(bed.cover))}`}
        </p>
      </div>
      <div>
        {standing.length === 0 && <p class="quiet">Nothing stands in it.</p>}
        {standing.map((sowing) => (
          <details key={sowing.id} id={`sowing-${sowing.id}`} class="sowing" open={props.open === sowing.id} onToggle={(event) => toggled(event, sowing.id, props)}>
            <summary>
              <b>{sowingName(sowing, byName)}</b>, {amountWords(sowing)}, {startWords(sowing, props.today)}, {pickingWords(sowing.forecast, props.today)}
            </summary>
            {props.open === sowing.id && (
              <SowingPanel sowing={sowing} crops={crops} beds={props.beds} today={props.today} again={props.again} onRemove={props.onRemoveSowing} />
            )}
          </details>
        ))}
        <BedActs bed={bed} again={props.again} onRemove={props.onRemoveBed} />
      </div>
    </>
  );
}

function toggled(event: Event, id: string, { open, onOpen }: Pick<BedListProps, "open" | "onOpen">): void {
  const isOpen = event.currentTarget instanceof HTMLDetailsElement && event.currentTarget.open;
  if (isOpen && open !== id) onOpen(id);
  if (!isOpen && open === id) onOpen(null);
}

function BedActs({ bed, again, onRemove }: { readonly bed: Bed; readonly again: () => Promise<void>; readonly onRemove: (bed: Bed) => Promise<void> }) {
  const [editing, setEditing] = useState<Bed | null>(null);
  const [conflict, setConflict] = useState<{ readonly mine: NewBed; readonly theirs: Bed } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const attempt = async (act: () => Promise<void>): Promise<void> => {
    try {
      setProblem(null);
      await act();
    } catch (thrown) {
      setProblem(asProblem(thrown).message);
    }
  };
  const leave = async (): Promise<void> => {
    setEditing(null);
    setConflict(null);
    await again();
  };
  const save = async (mine: NewBed): Promise<void> => {
    try {
      await calls.putBed(bed.id, mine);
    } catch (thrown) {
      if (!asProblem(thrown).stale) throw thrown;
      return setConflict({ mine, theirs: await calls.bed(bed.id) });
    }
    await leave();
  };
  if (conflict) return <Conflict what={bed.name} rows={rowsOf(conflict.mine, conflict.theirs)} keepMine={() => void attempt(() => save(conflict.mine))} keepTheirs={() => void leave()} />;
  if (editing) return <BedForm form={`bed-${bed.id}`} bed={editing} onSave={save} saveWords="Save the change" onLeave={() => setEditing(null)} />;
  return (
    <>
      {problem !== null && <ProblemNote key={problem} lead={problem} />}
      <p class="bed-acts">
        <button type="button" class="btn word" onClick={() => void attempt(async () => setEditing(await calls.bed(bed.id)))}>
          Change the bed<span class="vh">: {bed.name}</span>
        </button>
        <button type="button" class="btn word" onClick={() => void attempt(() => onRemove(bed))}>
          Remove the bed<span class="vh">: {bed.name}</span>
        </button>
      </p>
    </>
  );
}

function rowsOf(mine: NewBed, theirs: Bed): { name: string; mine: string; theirs: string }[] {
  return [
    { name: "Name", mine: mine.name, theirs: theirs.name },
    { name: "Length", mine: `${plain(mine.lengthM)} m`, theirs: `${plain(theirs.lengthM)} m` },
    { name: "Width", mine: `${plain(mine.widthM)} m`, theirs: `${plain(theirs.widthM)} m` },
    { name: "Cover", mine: coverWords(mine.cover), theirs: coverWords(theirs.cover) },
  ];
}
