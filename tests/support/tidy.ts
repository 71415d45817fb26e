/** The house rules as a function from a file to complaints; tests/tidy.test.ts runs it over the tree and over cases that must fail. */
import path from "node:path";

/** First matching row wins; $1 is the folder captured on the left. Imports are repository paths or package names. */
const IMPORT_RULES: readonly (readonly [from: string, may: string])[] = [
  ["shared/kernel/", "shared/kernel/|(?:luxon|fraction\\.js)$"],
  ["shared/engines/([^/]+)/", "shared/kernel/|shared/engines/$1/"],
  ["shared/planning/", "shared/kernel/|shared/planning/|shared/engines/[^/]+/(?:index|types)\\.ts$"],
  ["shared/contracts/", "shared/kernel/|shared/contracts/|zod$"],
  ["db/", "shared/|db/|drizzle-|pg$|zod$|csv-parse|node:"],
  ["server/(?:app|main|demo|demo-household|run|serve)\\.ts$", "."],
  ["server/(?:http|facts)/", "shared/|db/|server/(?:http|facts)/|server/[a-z-]+\\.ts$|@?fastify|drizzle-orm|zod$|node:"],
  ["server/([a-z-]+)/", "shared/|db/|server/(?:http|facts)/|server/(?:config|clock|problems)\\.ts$|server/$1/|@?fastify|drizzle-orm|zod$|csv-parse"],
  ["server/season-desk-solver\\.ts$", "shared/engines/season-plan/|highs$"],
  ["server/[a-z-]+\\.ts$", "shared/|server/[a-z-]+\\.ts$|db/|zod$|node:"],
  ["web/pages/([^/]+)/", "shared/(?!planning)|web/(?:parts|api)/|web/[a-z-]+\\.tsx?$|web/pages/$1/|@?preact|d3-"],
  ["web/", "shared/(?!planning)|web/|@?preact|d3-"],
  ["tests/", "."],
];

const HIDDEN_INPUT = /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bDateTime\.(?:now|local|utc)\(\s*\)/;
const MARKS = /\b(?:TODO|FIXME|XXX|HACK)\b|\.(?:skip|only)\(|\bnot implemented\b/i;
const RAW_SQL = /\b(?:tx|db|orm)\.(?:select|insert|update|delete|execute)\(|\bsql`/;
const VAGUE_NAME = /(?:^|\/)(?:utils?|helpers?|manager|processor)(?:\/|\.tsx?$)/;
/** Lines a file of one subject may have. */
const LONGEST_FILE = 300;

/** Repository paths and packages that a source imports, types included. */
export function importsOf(file: string, text: string): string[] {
  const found: string[] = [];
  const statements = /^\s*(?:import|export)\b(?:[^;"'`]*?\bfrom)?\s*["']([^"']+)["']|\bimport\s*\(\s*["']([^"']+)["']/gm;
  for (const [, whole, asked] of text.matchAll(statements)) {
    const name = whole ?? asked;
    if (name === undefined) continue;
    if (name.startsWith("#")) found.push(name.slice(1));
    else if (name.startsWith(".")) found.push(path.posix.normalize(path.posix.join(path.posix.dirname(file), name)));
    else found.push(name);
  }
  return found;
}

/** Complaints about one source file; an empty list means that the house is in order there. */
export function untidy(file: string, text: string): string[] {
  const row = IMPORT_RULES.find(([from]) => new RegExp(`^${from}`).test(file));
  if (!row) return [`${file}: no rule covers this folder`];
  const own = new RegExp(`^${row[0]}`).exec(file)?.[1] ?? "";
  const may = new RegExp(`^(?:${row[1].replaceAll("$1", own)})`);
  const complaints = importsOf(file, text)
    .filter((to) => !may.test(to))
    .map((to) => `${file} must not import ${to}`);
  if (file.startsWith("shared/") && HIDDEN_INPUT.test(text)) complaints.push(`${file} reads a clock or dice`);
  if (MARKS.test(text)) complaints.push(`${file} carries an unfinished mark`);
  if (VAGUE_NAME.test(file)) complaints.push(`${file}: a name that says nothing`);
  if (/^server\//.test(file) && !/\/store\.ts$|^server\/facts\//.test(file) && RAW_SQL.test(text)) complaints.push(`${file} holds SQL outside a store`);
  if (/^web\//.test(file) && /\sstyle=|dangerouslySetInnerHTML|innerHTML/.test(text)) complaints.push(`${file} breaks the content policy`);
  const lines = text.split("\n").length;
  if (lines > LONGEST_FILE) complaints.push(`${file} has ${lines} lines; is it one subject?`);
  return complaints;
}
