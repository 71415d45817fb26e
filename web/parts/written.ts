/** Words that people or the book wrote, as a page shows them: in the household's units, with number and unit on one line. */
import { inOurUnits } from "../format.ts";

export const written = (text: string): string => unbroken(inOurUnits(text));

const UNIT = /(\d[\d.,½¼¾⅓⅔]*|[½¼¾⅓⅔]) (?=(?:°[CF]|g|kg|mg|ml|l|L|litres?|cm|mm|min|minutes?|h|hours?|psi|in|ft|m|cups?|tbsp|tsp|oz|lb|days?|weeks?|months?|per cent|%)(?![\p{L}\p{N}]))/gu;

export const unbroken = (text: string): string => text.replace(UNIT, "$1\u00a0");
