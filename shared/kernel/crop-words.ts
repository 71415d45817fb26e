/** A crop's name inside a sentence: "Tomato, large" in the table, "tomatoes" in what the household reads. */

export interface CropNoun {
  /** "tomatoes", "French beans", "garlic". */
  readonly word: string;
  /** Whether a verb after it stands in the plural: tomatoes keep, garlic keeps. */
  readonly many: boolean;
}

/** Spoken of as a stuff, not counted. */
const UNCOUNTED = new Set([
  "okra", "sweetcorn", "garlic", "celery", "celeriac", "fennel", "lettuce", "chicory", "spinach", "chard", "kale", "cabbage", "broccoli",
  "beetroot", "cauliflower", "kohlrabi", "choi", "mizuna", "rocket", "parsley", "basil", "coriander", "dill", "mint", "thyme", "lovage", "asparagus", "rhubarb",
]);
/** Words that keep their capital wherever they stand. */
const PROPER = new Set(["French", "Brussels", "Florence", "Jerusalem", "Chinese", "Swiss"]);

/** The noun of a name in the crop table: lower case, in the plural where one counts them, without the part after the comma. */
export function cropNoun(name: string): CropNoun {
  const plain = (name.split(",")[0] as string).trim();
  const words = plain.split(" ").map((word) => (PROPER.has(word) ? word : word.toLowerCase()));
  const last = words[words.length - 1] as string;
  if (UNCOUNTED.has(last)) return { word: words.join(" "), many: false };
  return { word: [...words.slice(0, -1), plural(last)].join(" "), many: true };
}

export const cropWord = (name: string): string => cropNoun(name).word;

function plural(word: string): string {
  if (/(?:tomato|potato|radish|squash)$/.test(word)) return `${word}es`;
  if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ies`;
  return word.endsWith("s") ? word : `${word}s`;
}
