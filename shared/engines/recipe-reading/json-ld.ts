/**
 * A schema.org Recipe cut into its parts. Source: schema.org vocabulary (release 30): recipeIngredient, recipeInstructions (text, list, HowToStep,
 * HowToSection with itemListElement), recipeYield (text or QuantitativeValue), prepTime as an ISO 8601 duration.
 */
import { isoMinutes } from "./iso-minutes.ts";
import { LeftOver } from "./left-over.ts";
import { plainText } from "./markup.ts";
import { LONGEST, type RecipeParts, type Work } from "./types.ts";

type Node = Readonly<Record<string, unknown>>;

/** Deeper or wider than any page's data is not looked through. */
const MOST_NODES = 50_000;

/** Null where the data holds no Recipe. Text is parsed as JSON, or taken out of the page's script element. */
export function partsOfJsonLd(data: unknown, work: Work): RecipeParts | null {
  const recipe = recipeIn(typeof data === "string" ? parsed(data, work) : data, work);
  if (!recipe) return null;
  const left = new LeftOver();
  const ingredients = listOf(recipe["recipeIngredient"] ?? recipe["ingredients"]).flatMap((one) => linesOf(textOf(one, work)));
  for (const line of ingredients) if (line.length > LONGEST.ingredient) left.add(line, `An ingredient has at most ${LONGEST.ingredient} characters.`);
  const fitting = ingredients.filter((line) => line.length <= LONGEST.ingredient);
  for (const line of fitting.slice(LONGEST.ingredients)) left.add(line, `There are more than ${LONGEST.ingredients} ingredients.`);
  const method = instructionsIn(recipe["recipeInstructions"], left, work);
  for (const line of method.slice(LONGEST.steps)) left.add(line, `There are more than ${LONGEST.steps} steps.`);
  const prep = textOf(recipe["prepTime"], work);
  if (prep !== "" && isoMinutes(prep) === null) left.add(prep, "It is not a time as ISO 8601 writes it, such as PT20M.");
  const description = textOf(recipe["description"], work).trim();
  return {
    title: textOf(recipe["name"], work).trim() || null,
    yieldText: yieldTextOf(recipe["recipeYield"] ?? recipe["yield"], work),
    ingredients: fitting.slice(0, LONGEST.ingredients),
    method: method.slice(0, LONGEST.steps),
    notes: description === "" ? [] : [description],
    prepMin: isoMinutes(prep),
    notUnderstood: left.all(),
  };
}

/** The JSON itself, or that of the first script element of a page that holds linked data. */
function parsed(text: string, work: Work): unknown {
  work.looks += text.length;
  const from = text.indexOf("ld+json");
  const open = from < 0 ? -1 : text.indexOf(">", from);
  const close = open < 0 ? -1 : text.indexOf("</script", open);
  try {
    return JSON.parse(close > 0 ? text.slice(open + 1, close) : text) as unknown;
  } catch {
    return null;
  }
}

/** The first Recipe, nearest the top first; a queue, so that depth costs nothing. */
function recipeIn(data: unknown, work: Work): Node | null {
  const queue: unknown[] = [data];
  for (let at = 0; at < queue.length && at < MOST_NODES; at++) {
    work.looks++;
    const node = queue[at];
    if (Array.isArray(node)) for (let i = 0; i < node.length && queue.length < MOST_NODES; i++) queue.push(node[i]);
    else if (isNode(node)) {
      if (listOf(node["@type"]).some((type) => type === "Recipe" || type === "https://schema.org/Recipe" || type === "http://schema.org/Recipe")) return node;
      for (const key in node) if (queue.length < MOST_NODES) queue.push(node[key]);
    }
  }
  return null;
}

/** Texts of the steps in order: a stack whose top is the next, so that sections come before what stands behind them. */
function instructionsIn(value: unknown, left: LeftOver, work: Work): string[] {
  const lines: string[] = [];
  const stack: unknown[] = [value];
  for (let seen = 0; stack.length > 0 && seen < MOST_NODES; seen++) {
    work.looks++;
    const node = stack.pop();
    if (typeof node === "string") lines.push(...linesOf(plainText(node, work)));
    else if (Array.isArray(node)) for (let i = Math.min(node.length, MOST_NODES) - 1; i >= 0; i--) stack.push(node[i]);
    else if (isNode(node)) {
      const inner = node["itemListElement"] ?? node["steps"];
      if (inner !== undefined) {
        const name = textOf(node["name"], work).trim();
        if (name !== "" && node["@type"] !== "HowToStep") left.add(name, "The heading of a group of steps.");
        stack.push(inner);
      } else stack.push(textOf(node["text"] ?? node["name"] ?? node["description"], work));
    }
  }
  return lines;
}

function yieldTextOf(value: unknown, work: Work): string | null {
  // ["4", "4 servings"] says the same twice; the longer says of what
  const texts = listOf(value).map((one) => {
    if (!isNode(one)) return textOf(one, work);
    const amount = one["value"] ?? one["minValue"];
    return `${textOf(amount, work)} ${textOf(one["unitText"], work)}`.trim();
  });
  const longest = texts.sort((a, b) => b.length - a.length)[0]?.trim() ?? "";
  return longest === "" ? null : longest;
}

function textOf(value: unknown, work: Work): string {
  if (typeof value === "string") return plainText(value, work);
  if (typeof value === "number" && Number.isFinite(value)) return String(value);
  if (isNode(value)) return bareText(value["text"] ?? value["name"] ?? value["@value"], work);
  return "";
}

const bareText = (value: unknown, work: Work): string => (typeof value === "string" ? plainText(value, work) : "");
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value.slice(0, MOST_NODES) : value === undefined || value === null ? [] : [value]);
const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null && !Array.isArray(value);
const linesOf = (text: string): string[] => text.split("\n").map((line) => line.trim()).filter((line) => line !== "");
