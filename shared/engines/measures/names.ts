/** One spelling for the names of foods, so that Courgettes and courgette are the same word. */

/** Lower case, no accents, no marks, each word in the singular. */
export function nameKey(name: string): string {
  return name
    .toLowerCase()
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[’']/g, "'")
    .split(/[^a-z0-9'%-]+/)
    .filter(Boolean)
    .map(singular)
    .join(" ");
}

/** The singular of a word of the kitchen: leaves, tomatoes, berries, radishes, peaches. */
export function singular(word: string): string {
  if (word.length < 4 || !word.endsWith("s") || /(?:ss|us|is|'s)$/.test(word)) return word;
  if (word === "leaves" || word === "loaves" || word === "halves") return `${word.slice(0, -3)}f`;
  if (/(?:tomato|potato|mango|chilli|radish|dish|peach|bunch|branch|box|squash|batch|dash|pinch|glass|tomatillo)es$/.test(word)) return word.slice(0, -2);
  if (/[^aeiou]ies$/.test(word)) return word === "cookies" ? "cookie" : `${word.slice(0, -3)}y`;
  return word.slice(0, -1);
}
