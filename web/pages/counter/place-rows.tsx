/** Where the portions go: a place and how many, as many rows as it takes. Each becomes a lot of the larder. */
import type { Place } from "#shared/contracts/places.ts";
import { newId } from "../../api/new-id.ts";
import { FormField } from "../../parts/form-field.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import type { LotRow } from "./close-form.ts";

interface PlaceRowsProps {
  readonly rows: readonly LotRow[];
  readonly rooms: readonly Place[];
  readonly onChange: (rows: readonly LotRow[]) => void;
  readonly bad: (field: string) => { readonly wrong: string } | null;
}

const MOST = 12;

export function PlaceRows({ rows, rooms, onChange, bad }: PlaceRowsProps) {
  const focusLater = useFocusLater();
  const set = (index: number, change: Partial<LotRow>): void => onChange(rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
  return (
    <fieldset class="close-lots">
      <legend class="head">Put away</legend>
      {rooms.length === 0 && (
        <p>
          The larder has no place yet. <a href="/larder">Put one down there</a>, then come back.
        </p>
      )}
      {rooms.length > 0 &&
        rows.map((row, i) => (
          <div class="close-lot" key={row.id}>
            <div class="form-field">
              <label for={`close-place-${i}`}>Where</label>
              <select class="field" id={`close-place-${i}`} value={row.placeId} aria-invalid={bad(`close-place-${i}`) ? "true" : undefined} onChange={(event) => set(i, { placeId: event.currentTarget.value })}>
                {rooms.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </div>
            <FormField id={`close-lot-${i}`} label="Portions" value={row.portions} onInput={(portions) => set(i, { portions })} bad={bad(`close-lot-${i}`)} inputMode="numeric" />
            {rows.length > 1 && (
              <button
                type="button"
                class="btn word"
                onClick={() => {
                  focusLater("close-more");
                  onChange(rows.filter((_, k) => k !== i));
                }}
              >
                Remove<span class="vh"> this place</span>
              </button>
            )}
          </div>
        ))}
      {rooms.length > 0 && rows.length < MOST && (
        <button
          type="button"
          class="btn"
          id="close-more"
          onClick={() => {
            focusLater(`close-place-${rows.length}`);
            onChange([...rows, { id: newId(), placeId: rooms[0]?.id ?? "", portions: "" }]);
          }}
        >
          Another place
        </button>
      )}
    </fieldset>
  );
}
