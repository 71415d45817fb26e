/** What there is of jars, lids, bags and dry goods: one row each, which opens to be counted anew, changed or taken off. */
import { useState } from "preact/hooks";
import type { NewSupply, Supply } from "#shared/contracts/supplies.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { putSupply, removeSupply, supply as readOne } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { unbroken } from "../../parts/written.ts";
import { fieldsOf, supplyDifferences } from "./supply-form.ts";
import { SupplyForm } from "./supply-form.tsx";
import { dateWords, KIND_WORDS, millilitres, supplyAmount } from "./supply-words.ts";

interface SupplyRowsProps {
  readonly held: readonly Supply[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
}

interface Done {
  readonly words: string;
  readonly undo?: () => Promise<void>;
}

export function SupplyRows({ held, today, again }: SupplyRowsProps) {
  const [open, setOpen] = useState<Supply | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const { failure, attempt } = useAttempts();
  const [adding, setAdding] = useState(held.length === 0);
  // read by itself, the thing comes with the version that a change of it must name
  const openRow = (id: string): Promise<boolean> => attempt(async () => setOpen(await readOne(id)));
  const finish = async (next: Done): Promise<void> => {
    setOpen(null);
    await again();
    setDone(next);
  };
  const takeOff = async (gone: Supply): Promise<void> => {
    await removeSupply(gone.id);
    await finish({
      words: `${gone.name}: off the list.`,
      undo: async () => {
        await putSupply(newId(), bodyOf(gone));
        await finish({ words: `${gone.name}: on the list again.` });
      },
    });
  };
  return (
    <section class="sec no-print" aria-labelledby="held-h">
      <h2 id="held-h">What there is</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {done && <UndoLine done={done.words} undo={done.undo && (() => void attempt(done.undo as () => Promise<void>))} of={done.words} />}
      <ul class="rows supply-rows">
        {held.map((one) => (
          <li key={one.id}>
            {open?.id === one.id ? (
              <SupplyEdit was={open} today={today} done={finish} leave={() => setOpen(null)} takeOff={takeOff} />
            ) : (
              <Row one={one} today={today} open={() => void openRow(one.id)} />
            )}
          </li>
        ))}
      </ul>
      {adding ? (
        <SupplyForm
          form="new-supply"
          today={today}
          solid={held.length === 0}
          saveWords="Put it on the list"
          {...(held.length > 0 ? { leave: () => setAdding(false) } : {})}
          save={async (body) => {
            await putSupply(newId(), body);
            await finish({ words: `${body.name}: on the list.` });
          }}
        />
      ) : (
        <p class="acts">
          <button type="button" class="btn" onClick={() => setAdding(true)}>
            Write something else down
          </button>
        </p>
      )}
    </section>
  );
}

function Row({ one, today, open }: { readonly one: Supply; readonly today: LocalDate; readonly open: () => void }) {
  const kind = KIND_WORDS[one.kind];
  const named = one.name.toLowerCase().includes(kind.toLowerCase().replace(/(?:es|s)$/, ""));
  const said = [named ? "" : kind, one.holdsMl === undefined ? "" : `${millilitres(one.holdsMl)} each`, one.note ?? ""].filter(Boolean).join(", ");
  const date = dateWords(one, today);
  return (
    <>
      <p>
        <b class="what">{unbroken(one.name)}</b> <span class="quiet">{said}</span>
        {date !== "" && <span class={one.past ? "over" : "quiet"}>{date}</span>}
      </p>
      <span class="much">{supplyAmount(one)}</span>
      <button type="button" class="btn word" onClick={open}>
        Change<span class="vh"> {one.name}</span>
      </button>
    </>
  );
}

function bodyOf({ kind, name, amount, unit, holdsMl, bestUntil, note }: Supply): NewSupply {
  return { kind, name, amount, unit, ...(holdsMl === undefined ? {} : { holdsMl }), ...(bestUntil === undefined ? {} : { bestUntil }), ...(note === undefined ? {} : { note }) };
}

interface SupplyEditProps {
  readonly was: Supply;
  readonly today: LocalDate;
  readonly done: (next: Done) => Promise<void>;
  readonly leave: () => void;
  readonly takeOff: (gone: Supply) => Promise<void>;
}

function SupplyEdit({ was, today, done, leave, takeOff }: SupplyEditProps) {
  const [theirs, setTheirs] = useState<{ readonly mine: NewSupply; readonly now: Supply } | null>(null);
  const save = async (mine: NewSupply): Promise<void> => {
    try {
      await putSupply(was.id, mine);
    } catch (thrown) {
      if (!asProblem(thrown).stale) throw thrown;
      return setTheirs({ mine, now: await readOne(was.id) });
    }
    await done({ words: `${mine.name}: ${supplyAmount(mine)} there now.` });
  };
  if (theirs)
    return (
      <Conflict
        what={was.name}
        rows={supplyDifferences(fieldsOf({ ...theirs.mine, id: was.id, past: false }), fieldsOf(theirs.now))}
        keepMine={() => void save(theirs.mine)}
        keepTheirs={() => void done({ words: `${theirs.now.name}: left as it was saved.` })}
      />
    );
  return (
    <SupplyForm
      form={`supply-${was.id}`}
      today={today}
      starts={fieldsOf(was)}
      kept={was.note === undefined ? {} : { note: was.note }}
      save={save}
      saveWords="Save the change"
      leave={leave}
      remove={() => takeOff(was)}
    />
  );
}
