/** What came of a dish, as typed, and the batch it makes. Everything adds up to the portion, or the field says what is open. Pure. */
import type { NewBatch } from "#shared/contracts/batches.ts";
import type { CounterDish } from "#shared/contracts/counter.ts";
import { count } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { readGrams } from "../../parts/typed-amount.ts";

export interface LotRow {
  readonly id: string;
  readonly placeId: string;
  readonly portions: string;
}

export interface CloseFields {
  readonly portions: string;
  readonly each: string;
  readonly whole: string;
  readonly loss: string;
  readonly eaten: string;
  readonly given: string;
  readonly lots: readonly LotRow[];
  /** By lot taken from, in the order of the draft. */
  readonly took: readonly { readonly lotId: string; readonly grams: string }[];
}

interface PlaceKnown {
  readonly id: string;
  readonly kind: string;
}

/** Everything goes to the first place that the recipe keeps in; the cook changes what is otherwise. */
export function closeFields({ draft }: CounterDish, places: readonly PlaceKnown[], newId: () => string): CloseFields {
  const first = draft.keeps.map(({ place }) => places.find(({ kind }) => kind === place)).find((place) => place !== undefined);
  return {
    portions: String(draft.portions),
    each: "",
    whole: "",
    loss: "",
    eaten: first ? "" : String(draft.portions),
    given: "",
    lots: [{ id: newId(), placeId: first?.id ?? places[0]?.id ?? "", portions: first ? String(draft.portions) : "" }],
    took: draft.took.map(({ lotId, grams }) => ({ lotId, grams: `${grams} g` })),
  };
}

export type ReadClose = { readonly ok: true; readonly batch: NewBatch } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

export function readClose(fields: CloseFields, recipeId: string): ReadClose {
  const faults: FieldProblem[] = [];
  const bad = (field: string, text: string): void => void faults.push({ field, text });
  const whole = (field: string, text: string, name: string): number => {
    if (text.trim() === "") return 0;
    if (/^\d{1,5}$/.test(text.trim())) return Number(text);
    bad(field, `${name}: whole portions, such as 6`);
    return 0;
  };
  const weight = (field: string, text: string, name: string): number | undefined => {
    if (text.trim() === "") return undefined;
    if (/^0\s*(?:g|kg)?$/.test(text.trim())) return 0;
    const read = readGrams(text);
    if (read.ok) return read.value;
    bad(field, `${name}: ${read.wrong.toLowerCase()} ${read.works}`);
    return undefined;
  };
  const portions = whole("close-portions", fields.portions, "Portions made");
  const [eatenPortions, givenPortions] = [whole("close-eaten", fields.eaten, "Eaten now"), whole("close-given", fields.given, "Given away")];
  const [portionGrams, weighedGrams, lossGrams] = [weight("close-each", fields.each, "One portion"), weight("close-whole", fields.whole, "The whole"), weight("close-loss", fields.loss, "Lost")];
  const lots = fields.lots
    .map((row, i) => ({ id: row.id, placeId: row.placeId, portions: whole(`close-lot-${i}`, row.portions, "Portions put there") }))
    .filter((row) => row.portions > 0);
  if (lots.some(({ placeId }) => placeId === "")) bad("close-place-0", "Say where it goes: a place of the larder");
  const took = fields.took.flatMap(({ lotId, grams }, i) => {
    const read = weight(`close-took-${i}`, grams, "Taken from the larder");
    return read ? [{ lotId, grams: read }] : [];
  });
  const open = portions - eatenPortions - givenPortions - lots.reduce((sum, row) => sum + row.portions, 0);
  if (faults.length === 0 && open !== 0) bad("close-portions", openWords(open, portions));
  if (faults.length > 0) return { ok: false, faults };
  const given = { ...(portionGrams ? { portionGrams } : {}), ...(weighedGrams ? { weighedGrams } : {}), ...(lossGrams === undefined ? {} : { lossGrams }) };
  return { ok: true, batch: { recipeId, portions, ...given, eatenPortions, givenPortions, lots, took } };
}

const openWords = (open: number, made: number): string =>
  open > 0 ? `Portions made: ${open} of ${made} are neither eaten, given nor put away` : `Portions made: ${count(-open, "portion", "portions")} more are eaten, given or put away than were made`;

/** The control that a path of the service's answer belongs to. */
export function closeField(path: string): string {
  const [head = "", index = "0", rest = ""] = path.split(".");
  if (head === "lots") return rest === "placeId" ? `close-place-${index}` : `close-lot-${index}`;
  if (head === "took") return `close-took-${index}`;
  return FIELDS[head] ?? "close-portions";
}

const FIELDS: Readonly<Record<string, string>> = { portionGrams: "close-each", weighedGrams: "close-whole", lossGrams: "close-loss", eatenPortions: "close-eaten", givenPortions: "close-given" };
