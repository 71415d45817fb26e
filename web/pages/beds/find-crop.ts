/** The crop that a person means by what is typed: “carrots”, “Tomato, large”, “french bean”. */
import type { Crop } from "#shared/contracts/crops.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { capital, listed } from "../../format.ts";
import { got, wrong, type Typed } from "../../parts/typed.ts";

const plain = (text: string): string => text.trim().toLowerCase().replace(/[\s\u00a0]+/g, " ");

/** Ways to name a crop, closest first: its name, its short name, its word in the plural, the beginning of its name, any part of it. */
const CLOSENESS: readonly ((crop: Crop, typed: string) => boolean)[] = [
  (crop, typed) => plain(crop.name) === typed || crop.crop === typed || crop.crop.replaceAll("-", " ") === typed,
  (crop, typed) => plain(cropWord(crop.name)) === typed || plain(crop.name.split(",")[0] ?? "") === typed,
  (crop, typed) => plain(crop.name).startsWith(typed) || plain(cropWord(crop.name)).startsWith(typed),
  (crop, typed) => plain(crop.name).includes(typed) || plain(cropWord(crop.name)).includes(typed),
];
const MOST_NAMED = 4;

export function findCrop(text: string, crops: readonly Crop[]): Typed<Crop> {
  const typed = plain(text);
  if (typed === "") return wrong("No crop is named.", "Write its name or choose one from the list.");
  for (const close of CLOSENESS) {
    const found = crops.filter((crop) => close(crop, typed));
    if (found.length === 1) return got(found[0] as Crop, plain((found[0] as Crop).name) === typed ? undefined : `Read as ${(found[0] as Crop).name}.`);
    if (found.length > 1) return wrong(`${capital(numberWord(found.length))} crops are called that.`, `Choose ${listedOr(found.map(({ name }) => name))}.`);
  }
  return wrong("No crop of that name is in the book.", "Choose one from the list, or the nearest relative of it.");
}

function numberWord(n: number): string {
  return ["", "one", "two", "three", "four", "five", "six"][n] ?? "several";
}

function listedOr(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMED);
  const words = listed(shown.map((name) => `“${name}”`)).replace(" and ", " or ");
  return names.length > MOST_NAMED ? `one of them, such as ${words}` : words;
}
