/** The scale sheet: crop, weight, done. An odd weight is asked about beside the field, and may be saved all the same. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { Today } from "#shared/contracts/today.ts";
import { putPick } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { amountSpan, measured } from "../../format.ts";
import { FormField } from "../../parts/form-field.tsx";
import { readGrams } from "../../parts/typed-amount.ts";
import { inPounds } from "../../units.ts";
import { choiceName, isOdd, slipOfDigit } from "./pick-words.ts";

type Pick = Today["pick"][number];

export interface LoggedPick {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
}

interface PickSheetProps {
  readonly picks: readonly Pick[];
  /** Sowing whose row was pressed; null where none was, and the crop is still to be chosen. */
  readonly first: string | null;
  readonly today: string;
  readonly onClose: (pick: LoggedPick | null) => void;
}

export function PickSheet({ picks, first, today, onClose }: PickSheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [id] = useState(newId);
  const [chosen, setChosen] = useState(first ?? picks[0]?.sowingId ?? "");
  const [typed, setTyped] = useState("");
  const [bad, setBad] = useState<{ readonly wrong: string; readonly works?: string } | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    dialog.current?.showModal();
    document.getElementById("pick-grams")?.focus();
  }, []);
  const pick = picks.find((one) => one.sowingId === chosen);
  const weight = readGrams(typed);
  const odd = pick && weight.ok && isOdd(weight.value, pick) ? weight.value : null;
  const refuse = (wrong: string, works?: string): void => {
    setBad({ wrong, ...(works === undefined ? {} : { works }) });
    document.getElementById("pick-grams")?.focus();
  };
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (busy) return;
    if (!weight.ok) return refuse(weight.wrong, weight.works);
    setBusy(true);
    try {
      await putPick(id, { sowingId: chosen, pickedOn: today, grams: weight.value });
      dialog.current?.close();
      onClose({ id, name: pick ? choiceName(pick, picks) : "", grams: weight.value });
    } catch (thrown) {
      setBusy(false);
      refuse(asProblem(thrown).message);
    }
  };
  return (
    <dialog class="sheet" ref={dialog} aria-labelledby="log-h" onClose={() => onClose(null)}>
      <form onSubmit={(event) => void save(event)} noValidate>
        <div class="headline-row">
          <h2 id="log-h">Log a pick</h2>
          <button type="button" class="btn word garden" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        <details open={first === null}>
          <summary class="which">
            <span class="what">{pick ? choiceName(pick, picks) : ""}</span> <span class="word">Another crop</span>
          </summary>
          <fieldset class="opts">
            <legend class="vh">Crop</legend>
            {picks.map((one) => (
              <label class="opt" key={one.sowingId}>
                <input type="radio" name="pick-crop" value={one.sowingId} checked={one.sowingId === chosen} onChange={() => setChosen(one.sowingId)} />
                <span>{choiceName(one, picks)}</span>
              </label>
            ))}
          </fieldset>
        </details>
        <FormField
          id="pick-grams"
          label={inPounds() ? "Weight on the scale, in ounces (or 2 lb 3 oz)" : "Weight on the scale, in grams (or 1.2 kg)"}
          value={typed}
          onInput={(text) => {
            setTyped(text);
            setBad(null);
          }}
          inputMode="decimal"
          big
          say={pick && odd === null ? `Today’s likely pick is ${amountSpan(pick.grams.low, pick.grams.high)}.` : ""}
          bad={bad}
        />
        <div role="status">{pick && odd !== null && <OddWeight grams={odd} slip={slipOfDigit(odd, pick)} take={(grams) => setTyped(inPounds() ? measured(grams).replaceAll("\u00a0", " ") : String(grams))} />}</div>
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

function OddWeight({ grams, slip, take }: { readonly grams: number; readonly slip: number | null; readonly take: (grams: number) => void }) {
  return (
    <p class="odd">
      <span>
        <b class="bad">{measured(grams)} is far above the usual.</b> Change it, or save it as it stands.
      </span>
      {slip !== null && (
        <button type="button" class="btn garden" onClick={() => take(slip)}>
          Make it {measured(slip)}
        </button>
      )}
    </p>
  );
}
