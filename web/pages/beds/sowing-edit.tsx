/** Changes a stored sowing. It is read once more when the form opens, so that a change by somebody else is seen and not written over. */
import { useState } from "preact/hooks";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { NewSowing, Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { failureOf, type Failure } from "./failure.ts";
import { readSlip, slipOf, type SlipText } from "./slip.ts";
import { SowingFields } from "./sowing-fields.tsx";

interface SowingEditProps {
  /** As just read. */
  readonly sowing: Sowing;
  readonly crops: readonly Crop[];
  readonly beds: readonly Bed[];
  readonly today: LocalDate;
  /** Leaves the form; after a change the page is drawn again first. */
  readonly onDone: (changed: boolean) => void;
}

export function SowingEdit({ sowing, crops, beds, today, onDone }: SowingEditProps) {
  const form = `edit-${sowing.id}`;
  const [text, setText] = useState<SlipText>(() => slipOf(sowing, crops, today));
  const [failure, setFailure] = useState<Failure | null>(null);
  const [theirs, setTheirs] = useState<Sowing | null>(null);
  const read = readSlip(text, crops, today, form);
  const put = async (body: NewSowing): Promise<void> => {
    try {
      await calls.putSowing(sowing.id, body);
      onDone(true);
    } catch (thrown) {
      // reading it once more also keeps its new version: a second attempt then knows what it writes over
      if (asProblem(thrown).stale) setTheirs(await calls.sowing(sowing.id));
      else setFailure(failureOf(thrown, form, "this sowing"));
    }
  };
  const body = read.body;
  if (theirs && body) {
    return <Conflict what="this sowing" rows={rowsOf(text, slipOf(theirs, crops, today), beds)} keepMine={() => void put(body)} keepTheirs={() => onDone(true)} />;
  }
  const submit = (event: Event): void => {
    event.preventDefault();
    if (body === null) setFailure(failureOf(read.faults, form, "this sowing"));
    else void put(body);
  };
  return (
    <form class="part" aria-label="Change this sowing" onSubmit={submit} noValidate>
      {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
      <SowingFields form={form} text={text} read={read} crops={crops} beds={beds} onChange={(change) => setText({ ...text, ...change })} strict />
      <p class="acts">
        <button type="submit" class="btn">
          Save the change
        </button>
        <button type="button" class="btn word" onClick={() => onDone(false)}>
          Leave it as it was
        </button>
      </p>
    </form>
  );
}

const ROWS: readonly (readonly [keyof SlipText, string])[] = [
  ["crop", "Crop"],
  ["when", "When"],
  ["much", "How much"],
  ["bedId", "Bed"],
  ["method", "Way"],
  ["variety", "Variety"],
  ["varietyDays", "Days on its packet"],
  ["note", "Note"],
];

function rowsOf(mine: SlipText, theirs: SlipText, beds: readonly Bed[]): { name: string; mine: string; theirs: string }[] {
  const words = (text: SlipText, field: keyof SlipText): string => (field === "bedId" ? (beds.find(({ id }) => id === text.bedId)?.name ?? "") : (text[field] ?? ""));
  return ROWS.map(([field, name]) => ({ name, mine: words(mine, field), theirs: words(theirs, field) }));
}
