/**
 * Question: what does an ingredient line say? Amounts as fractions, units, food, size, preparation and remarks.
 * Plain rules over word lists (seed-data/measures/words.json), no guessing: what is not understood stays in the food or the remark.
 */
import { readFood } from "./food.ts";
import { readLead } from "./lead.ts";
import type { Draft } from "./amounts.ts";
import { tokensOf } from "./tokens.ts";
import type { Token } from "./tokens.ts";
import { totalOf } from "./total.ts";
import type { MeasureTables, ReadAmount, ReadLine } from "./types.ts";

/** Never throws and never loses the text; a line without an amount has `amount: null`. */
export function readIngredient(text: string, tables: MeasureTables): ReadLine {
  const tokens = tokensOf(text, tables.words);
  const lead = readLead(tokens);
  const food = readFood(tokens, lead.next, tables);
  const drafts = [...lead.drafts, ...food.drafts];
  const name = [...food.name];
  takeUnitFromName(drafts, name, food.sizes);
  const amounts = drafts.map(finished);
  const total = totalOf(amounts, tables);
  return {
    text,
    ...total,
    food: joined(name),
    size: lead.sizes.length > 0 ? lead.sizes.join(" ") : joined(food.sizes),
    preparation: [...lead.parts, joined(food.preparation)].filter((words) => words !== "").join(" "),
    comment: [...lead.remarks, joined(food.comment)].filter((words) => words !== "").join(" "),
    amounts,
  };
}

/** Pieces that are named behind the food: 2 garlic cloves, 1 rosemary sprig, 2 lemon slices. */
const BEHIND: ReadonlySet<string> = new Set(["clove", "sprig", "slice", "spear", "stalk", "rasher", "stick", "head", "bulb", "wedge", "sheet", "rib", "strip"]);

function takeUnitFromName(drafts: readonly Draft[], name: Token[], sizes: readonly Token[]): void {
  const first = drafts[0];
  const last = name[name.length - 1];
  if (!first || first.unit !== null || name.length < 2 || !last?.entry?.unit || !BEHIND.has(last.entry.unit)) return;
  // a cinnamon stick is the food, and so are whole cloves
  const before = name[name.length - 2] as Token;
  if (before.low === "cinnamon" || name.slice(0, -1).every((token) => token.entry?.roles.has("leading-adjective"))) return;
  first.unit = last.entry.unit;
  first.kind = last.entry.unitKind;
  first.unitWords = [...sizes.map((size) => size.text), last.text];
  name.pop();
}

function finished(draft: Draft): ReadAmount {
  return { amount: draft.amount, max: draft.max, text: draft.text, unit: draft.unit, unitWords: draft.unitWords, role: draft.role };
}

/** Words with single spaces; a mark sticks to the word before it. */
function joined(tokens: readonly Token[]): string {
  let words = "";
  for (const token of tokens) words += words === "" || (token.kind === "mark" && token.text !== "/" && token.text !== "&") ? token.text : ` ${token.text}`;
  return words;
}
