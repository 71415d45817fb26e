/** Versions of editable things and of answers: RFC 9110 §8.8.3 (ETag), §13.1.1 (If-Match, which compares strongly), §13.1.2 (If-None-Match). */
import { createHash } from "node:crypto";

/**
 * The tag of a stored row. `born` is when the row was first written: an id that was deleted and put again must not answer
 * to a tag of its earlier life.
 */
export function tagOf(row: { readonly version: number; readonly recordedAt: string }): string {
  return `"${row.version}-${Date.parse(row.recordedAt).toString(36)}"`;
}

/** The tag of something that is never deleted but can start anew: its content is in it, because its versions start from one again. */
export function tagOfContent(version: number, content: unknown): string {
  return `"${version}-${createHash("sha256").update(JSON.stringify(content)).digest("base64url").slice(0, 16)}"`;
}

/** The tag of an answer that is nowhere stored: its own digest. */
export function tagOfBytes(bytes: Buffer | string): string {
  return `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`;
}

/** Whether an If-None-Match header names this tag; it compares weakly (RFC 9110 §13.1.2). */
export function namesWeakly(ifNoneMatch: string, tag: string): boolean {
  const bare = (candidate: string): string => candidate.trim().replace(/^W\//, "");
  return ifNoneMatch.trim() === "*" || ifNoneMatch.split(",").some((candidate) => bare(candidate) === bare(tag));
}

/** Whether an If-Match header names this tag; `*` names whatever is there, a weak tag never matches. */
export function names(ifMatch: string, tag: string): boolean {
  return ifMatch.trim() === "*" || ifMatch.split(",").some((candidate) => candidate.trim() === tag);
}
