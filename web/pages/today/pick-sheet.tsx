/** The scale sheet: crop, weight, done. An odd weight is asked about beside the field, and may be saved all the same. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { Today } from "#shared/contracts/today.ts";
import { putPick } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { amountSpan, measured } from "../../format.ts";
import { FormField } from "../../parts/form-field.tsx";
import { readGrams } from "../../parts/typed-amount.ts";

export interface LoggedPick {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
}

interface PickSheetProps {
  readonly picks: Today["pick"];
  /** Sowing that is chosen when the sheet opens. */
  readonly first: string;
  readonly today: string;
  readonly onClose: (pick: LoggedPick | null) => void;
}

/** So many times the high amount, or more, is asked about: a slip of a digit is ten times. */
const ODD = 3;

export function PickSheet({ picks, first, today, onClose }: PickSheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [id] = useState(newId);
  const [chosen, setChosen] = useState(first);
  const [typed, setTyped] = useState("");
  const [bad, setBad] = useState<{ readonly wrong: string; readonly works?: string } | null>(null);
  useEffect(() => {
    dialog.current?.showModal();
    document.getElementById("pick-grams")?.focus();
  }, []);
  const pick = picks.find((one) => one.sowingId === chosen);
  const weight = readGrams(typed);
  const odd = pick && weight.ok && weight.value > ODD * Math.max(pick.grams.high, 100) ? weight.value : null;
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (!weight.ok) return setBad({ wrong: weight.wrong, works: weight.works });
    try {
      await putPick(id, { sowingId: chosen, pickedOn: today, grams: weight.value });
      dialog.current?.close();
      onClose({ id, name: pick?.name ?? "", grams: weight.value });
    } catch (thrown) {
      setBad({ wrong: asProblem(thrown).message });
    }
  };
  const say = odd === null ? (pick ? `Today’s likely pick is ${amountSpan(pick.grams.low, pick.grams.high)}.` : "") : <OddWeight grams={odd} usual={pick?.grams.high ?? 0} take={(grams) => setTyped(String(grams))} />;
  return (
    <dialog class="sheet" ref={dialog} aria-labelledby="log-h" onClose={() => onClose(null)}>
      <form onSubmit={(event) => void save(event)} noValidate>
        <div class="headline-row">
          <h2 id="log-h">Log a pick</h2>
          <button type="button" class="btn word" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        <fieldset class="choice">
          <legend class="label">Crop</legend>
          <div class="opts">
            {picks.map((one) => (
              <label class="opt" key={one.sowingId}>
                <input type="radio" name="pick-crop" value={one.sowingId} checked={one.sowingId === chosen} onChange={() => setChosen(one.sowingId)} />
                <span>{picks.filter((other) => other.crop === one.crop).length > 1 ? `${one.name}, ${one.bedName}` : one.name}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <FormField id="pick-grams" label="Weight on the scale, in grams (or 1.2 kg)" value={typed} onInput={(text) => (setTyped(text), setBad(null))} inputMode="decimal" big say={say} bad={bad} />
        <p class="sheet-acts">
          <button type="submit" class="btn main garden">
            Save pick
          </button>
        </p>
        <p class="say">
          For another day or another sowing, open it in <a href="/beds">the beds</a>.
        </p>
      </form>
    </dialog>
  );
}

function OddWeight({ grams, usual, take }: { readonly grams: number; readonly usual: number; readonly take: (grams: number) => void }) {
  const tenth = Math.round(grams / 10);
  return (
    <>
      <b class="bad">{measured(grams)} is far above the usual.</b> Change it, or save it as it stands.{" "}
      {tenth > 0 && tenth <= ODD * usual && (
        <button type="button" class="btn garden" onClick={() => take(tenth)}>
          Make it {measured(tenth)}
        </button>
      )}
    </>
  );
}
