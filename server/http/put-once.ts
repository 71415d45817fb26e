/**
 * A new thing is put under an id that the page made: the first time stores it, the same body again changes nothing, and another body is an edit
 * that must name the version it edits — or, for what is only ever added to, a conflict.
 */
import { isDeepStrictEqual } from "node:util";
import type { Problem, Result } from "#shared/kernel/outcome.ts";
import { ok, refuse } from "#shared/kernel/outcome.ts";
import { Refusal } from "../problems.ts";
import { names } from "./etag.ts";

export interface Put<Row> {
  readonly made: boolean;
  readonly row: Row;
}

interface Once<Row, Body> {
  readonly body: Body;
  /** The body that would have stored this row. */
  readonly bodyOf: (row: Row) => Body;
  /** The stored row, locked until the transaction ends. */
  readonly find: () => Promise<Row | undefined>;
  /** What forbids this body; `stored` is the row it would replace. Not asked when the same body comes again. */
  readonly check?: (stored: Row | undefined) => Promise<Problem | undefined>;
  /** Undefined when another request was first under this id. */
  readonly insert: () => Promise<Row | undefined>;
}

interface Editable<Row, Body> extends Once<Row, Body> {
  readonly ifMatch: string | undefined;
  readonly tagOf: (row: Row) => string;
  readonly update: (stored: Row) => Promise<Row>;
}

/** For editable things: bed, sowing, sighting, recipe, plan line, cook day. */
export async function putEditable<Row, Body>(ask: Editable<Row, Body>): Promise<Result<Put<Row>>> {
  const stored = await ask.find();
  if (stored === undefined) {
    if (ask.ifMatch !== undefined) return refuse("precondition-failed", "What you are changing is not there any more. Put it without If-Match to store it anew.");
    const problem = await ask.check?.(undefined);
    if (problem) return { ok: false, problem };
    const row = await ask.insert();
    // lost a race: the winner's row is committed by now, so the second look finds it
    return row === undefined ? putEditable(ask) : ok({ made: true, row });
  }
  if (sameBody(ask.body, ask.bodyOf(stored))) return ok({ made: false, row: stored });
  const stale = refuseStale(ask.ifMatch, ask.tagOf(stored));
  if (stale) return { ok: false, problem: stale };
  const problem = await ask.check?.(stored);
  if (problem) return { ok: false, problem };
  return ok({ made: false, row: await ask.update(stored) });
}

/** For what is only ever added to: picks. */
export async function putOnce<Row, Body>(ask: Once<Row, Body> & { readonly what: string }): Promise<Result<Put<Row>>> {
  const stored = await ask.find();
  if (stored !== undefined) {
    if (sameBody(ask.body, ask.bodyOf(stored))) return ok({ made: false, row: stored });
    return refuse("conflict", `Another ${ask.what} is already stored under this id, and a ${ask.what} is never rewritten: undo it with DELETE and put a new one.`);
  }
  const problem = await ask.check?.(undefined);
  if (problem) return { ok: false, problem };
  const row = await ask.insert();
  return row === undefined ? putOnce(ask) : ok({ made: true, row });
}

/** What stands in the way of an edit: no version named (RFC 6585 §3), or a stale one. */
export function refuseStale(ifMatch: string | undefined, tag: string): Problem | undefined {
  if (ifMatch === undefined) return { code: "precondition-required", detail: "This is stored already with other content. To change it, send the ETag you last saw as If-Match." };
  if (!names(ifMatch, tag)) return { code: "precondition-failed", detail: "It was changed since you last saw it. Load it again and look at both." };
  return undefined;
}

/** Equal after parsing: order of fields and fields left out do not count. */
export function sameBody(one: unknown, other: unknown): boolean {
  return isDeepStrictEqual(bare(one), bare(other));
}

function bare(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bare);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, inner]) => inner !== undefined)
      .map(([key, inner]) => [key, bare(inner)]),
  );
}

/** A delete may name the version it means; when it does, a stale one is refused. */
export function refuseStaleDelete(ifMatch: string | undefined, tag: string): void {
  const stale = ifMatch === undefined ? undefined : refuseStale(ifMatch, tag);
  if (stale) throw new Refusal(stale);
}
