/** What zod finds wrong, one entry for each bad field, in words that a person who typed it understands. */
import type { z } from "zod";
import type { FieldFault } from "#shared/kernel/outcome.ts";

type Issue = z.core.$ZodIssue;
type RawIssue = z.core.$ZodRawIssue;

const KINDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "an object with named fields",
  record: "an object with named fields",
};

const size = (origin: unknown): string => (origin === "string" ? " characters" : origin === "array" ? " entries" : "");

/** Words for faults to which the contract gives none of its own. */
export function inPlainWords(issue: RawIssue): string | undefined {
  switch (issue.code) {
    case "invalid_type":
      if (issue.input === undefined) return "is needed";
      return issue.expected === "int" ? "must be a whole number" : `must be ${KINDS[String(issue.expected)] ?? String(issue.expected)}`;
    case "invalid_value":
      return issue.input === undefined ? "is needed" : `must be ${issue.values.length > 1 ? "one of " : ""}${issue.values.join(", ")}`;
    case "too_small":
      return `must be ${issue.inclusive === false ? "more than" : "at least"} ${String(issue.minimum)}${size(issue.origin)}`;
    case "too_big":
      return `must be ${issue.inclusive === false ? "less than" : "at most"} ${String(issue.maximum)}${size(issue.origin)}`;
    case "not_multiple_of":
      return `must be a multiple of ${String(issue.divisor)}`;
    default:
      return undefined;
  }
}

/** One fault for each bad field with its dotted path, unknown fields one by one. */
export function faultsOf(issues: readonly Issue[]): FieldFault[] {
  const byPath = new Map<string, FieldFault>();
  for (const fault of faultsAt(issues, [])) if (!byPath.has(fault.path)) byPath.set(fault.path, fault);
  return [...byPath.values()];
}

function faultsAt(issues: readonly Issue[], at: readonly PropertyKey[]): FieldFault[] {
  return issues.flatMap((issue): FieldFault[] => {
    const path = [...at, ...issue.path];
    if (issue.code === "unrecognized_keys") return issue.keys.map((key) => ({ path: dotted([...path, key]), message: "is not a field here" }));
    if (issue.code === "invalid_union" && issue.errors.length > 0) return faultsAt(nearest(issue.errors), path);
    if (issue.code === "invalid_key") return [{ path: dotted(path), message: issue.issues[0]?.message ?? issue.message }];
    return [{ path: dotted(path), message: OVEN.test(dotted(path)) && issue.code === "invalid_type" ? ONE_OVEN : issue.message }];
  });
}

/** An oven asked for twice is the mistake cooks make here, so it is answered in their words. */
const OVEN = /^steps\.\d+\.needs\.oven(?:\.c)?$/;
const ONE_OVEN = "must be one oven at one temperature, {c, trays}: a step cannot need two; make it two steps";

const dotted = (path: readonly PropertyKey[]): string => path.map(String).join(".");

/** Of several shapes the one that was most likely meant: the one whose faults lie deepest, then the one with fewest. */
function nearest(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]): number => Math.max(...issues.map((issue) => issue.path.length + (issue.code === "invalid_type" ? 0 : 0.5)));
  return [...branches].sort((a, b) => depth(b) - depth(a) || a.length - b.length)[0] ?? [];
}

/** Text that PostgreSQL cannot hold; JSON can carry it as an escape. */
export function nulFaults(value: unknown, path: readonly PropertyKey[] = []): FieldFault[] {
  if (typeof value === "string") return value.includes("\u0000") ? [{ path: dotted(path), message: "must not contain the NUL character" }] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key.includes("\u0000") ? [{ path: dotted(path), message: "a field's name must not contain the NUL character" }] : nulFaults(inner, [...path, key])));
}
