/** Changes a bed, or takes it away. It is given as just read, so that a change by somebody else is seen and not written over. */
import { useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import * as calls from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { metres } from "../../format.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { BedForm, coverWords } from "./bed-form.tsx";

interface BedEditProps {
  readonly bed: Bed;
  readonly onDone: (changed: boolean) => void;
  readonly onRemove: () => void;
}

export function BedEdit({ bed, onDone, onRemove }: BedEditProps) {
  const [conflict, setConflict] = useState<{ readonly mine: NewBed; readonly theirs: Bed } | null>(null);
  const save = async (mine: NewBed): Promise<void> => {
    try {
      await calls.putBed(bed.id, mine);
    } catch (thrown) {
      if (!asProblem(thrown).stale) throw thrown;
      // reading it once more also keeps its new version: a second attempt then knows what it writes over
      return setConflict({ mine, theirs: await calls.bed(bed.id) });
    }
    onDone(true);
  };
  if (conflict) return <Conflict what={bed.name} rows={rowsOf(conflict.mine, conflict.theirs)} keepMine={() => void save(conflict.mine)} keepTheirs={() => onDone(true)} />;
  return <BedForm form={`bed-${bed.id}`} bed={bed} onSave={save} saveWords="Save the change" onLeave={() => onDone(false)} onRemove={onRemove} />;
}

function rowsOf(mine: NewBed, theirs: Bed): { name: string; mine: string; theirs: string }[] {
  return [
    { name: "Name", mine: mine.name, theirs: theirs.name },
    { name: "Length", mine: metres(mine.lengthM), theirs: metres(theirs.lengthM) },
    { name: "Width", mine: metres(mine.widthM), theirs: metres(theirs.widthM) },
    { name: "Cover", mine: coverWords(mine.cover), theirs: coverWords(theirs.cover) },
  ];
}
