/** One lot with what can be done: take out, add, move. The first press opens the amounts, the second takes one of them. */
import { useState } from "preact/hooks";
import type { LarderLot, NewMovement } from "#shared/contracts/lots.ts";
import { FormField } from "../../parts/form-field.tsx";
import { readAmount, type LotAmount } from "./read-amount.ts";
import { readyAmounts } from "./lot-words.ts";

export type Deed = "take" | "put" | "give" | "compost" | "move";
/** Stores one movement of a lot, at one of its places; a move says where to. */
export type Move = (lot: LarderLot, kind: NewMovement["kind"], amount: LotAmount, at: { readonly placeId?: string; readonly toPlaceId?: string }) => Promise<void>;

const WORDS: Readonly<Record<Deed, string>> = { take: "Take out", put: "Add", give: "Give away", compost: "Throw away", move: "Move" };

interface MoveRowProps {
  readonly lot: LarderLot;
  readonly name: string;
  readonly deeds: readonly Deed[];
  readonly placeId?: string;
  /** Where it may be moved. */
  readonly others?: readonly { readonly id: string; readonly name: string }[];
  readonly onMove: Move;
  /** Words only, where many rows stand close together. */
  readonly quiet?: boolean;
}

export function MoveRow({ lot, name, deeds, placeId, others = [], onMove, quiet = false }: MoveRowProps) {
  const [open, setOpen] = useState<Deed | null>(null);
  const [other, setOther] = useState("");
  const [toPlaceId, setTo] = useState(others[0]?.id ?? "");
  const [bad, setBad] = useState<{ wrong: string; works: string } | null>(null);
  const left = lot.stands.find((stand) => stand.placeId === placeId) ?? lot;
  const move = async (deed: Deed, amount: LotAmount): Promise<void> => {
    setOpen(null);
    setOther("");
    await onMove(lot, deed, amount, { ...(placeId === undefined ? {} : { placeId }), ...(deed === "move" ? { toPlaceId } : {}) });
  };
  const typed = async (deed: Deed): Promise<void> => {
    const read = readAmount(other, lot.countedIn ?? "portions");
    setBad(read.ok ? null : { wrong: read.wrong, works: read.works });
    if (read.ok) await move(deed, read.value);
  };
  return (
    <div class="move-row no-print">
      <p class="acts">
        {deeds.map((deed, i) => (
          <button key={deed} type="button" class={i === 0 && !quiet ? "btn" : "btn word"} aria-expanded={open === deed ? "true" : "false"} onClick={() => setOpen(open === deed ? null : deed)}>
            {WORDS[deed]}
            <span class="vh">: {name}</span>
          </button>
        ))}
      </p>
      {open !== null && (
        <form
          class="amounts"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            void typed(open);
          }}
        >
          {open === "move" && (
            <div class="form-field">
              <label for={`to-${lot.id}-${placeId ?? ""}`}>Where to</label>
              <select class="field" id={`to-${lot.id}-${placeId ?? ""}`} value={toPlaceId} onChange={(event) => setTo(event.currentTarget.value)}>
                {others.map(({ id, name: place }) => (
                  <option key={id} value={id}>
                    {place}
                  </option>
                ))}
              </select>
            </div>
          )}
          {readyAmounts(left, lot.countedIn, open !== "put").map(({ words, ...amount }) => (
            <button key={words} type="button" class="btn" onClick={() => void move(open, amount as LotAmount)}>
              {words}
              <span class="vh">
                {" "}
                of {name}: {WORDS[open].toLowerCase()}
              </span>
            </button>
          ))}
          <FormField id={`other-${lot.id}-${placeId ?? ""}`} label="Another amount" value={other} onInput={setOther} bad={bad} />
          <button type="submit" class="btn">
            {WORDS[open]}
          </button>
        </form>
      )}
    </div>
  );
}
