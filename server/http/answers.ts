/**
 * Answers that follow from a household's stored facts and the day alone. Each is kept as it was sent, packed for those who take it packed, and given
 * again while the stamps of the facts are what they were; so what took a second to reckon is read in a millisecond, and is never out of date.
 */
import type { FastifyReply, FastifyRequest } from "fastify";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { Clock } from "../clock.ts";
import { loadHouse, loadStamps, type House, type Part } from "../facts/house.ts";
import { keptUpTo } from "../facts/kept.ts";
import type { Within } from "./member.ts";
import { pack, packingFor, type Packing } from "./packing.ts";
import { tagOfBytes } from "./etag.ts";

/** The answer's address, with all that is asked in it, belongs to the question; so does the day. */
export interface Question<Facts> {
  readonly restsOn: readonly Part[];
  /** What else the answer was made with that no stamp tells of. */
  readonly also?: (householdId: string) => string;
  readonly asOf?: LocalDate | undefined;
  /** Reads the facts, in the transaction that read the stamps. */
  readonly load: (tx: Tx, house: House, day: LocalDate) => Promise<Facts>;
  /** The body by the route's contract; `etag` where the answer is a stored thing with a tag of its own. */
  readonly reckon: (facts: Facts) => { readonly body: unknown; readonly etag?: string };
}

export type Answer = <Facts>(request: FastifyRequest, reply: FastifyReply, question: Question<Facts>) => Promise<FastifyReply>;

interface KeptAnswer {
  readonly etag: string;
  readonly plain: Buffer;
  readonly packed: Map<Packing, Buffer>;
}

const MOST_BYTES = 24 * 1024 * 1024;
/** Where households live, which says what day it is there. */
const MOST_ZONES = 4_000;
/** About what an entry takes besides its text. */
const NAME_BYTES = 300;
/** Below this, packing costs more than it saves. */
const WORTH_PACKING_BYTES = 1024;

export function answers(within: Within, clock: Clock): Answer {
  const kept = keptUpTo<KeptAnswer>(MOST_BYTES);
  const zones = keptUpTo<string>(MOST_ZONES * NAME_BYTES);

  return async (request, reply, { restsOn, also, asOf, load, reckon }) => {
    const found = await within(request, async (tx, householdId) => {
      const stamps = await loadStamps(tx, householdId);
      const zoneAt = { name: householdId, stamp: stamps && stamps.garden };
      const zone = zones.find(zoneAt);
      const house = zone === undefined ? await loadHouse(tx, householdId) : null;
      if (house !== null) zones.keep(zoneAt, house.zone, NAME_BYTES);
      const day = asOf ?? clock.today(house?.zone ?? (zone as string));
      const place = { name: `${householdId} ${day} ${request.url}`, stamp: stamps && [...restsOn.map((part) => stamps[part]), also?.(householdId) ?? ""].join(" ") };
      const known = kept.find(place);
      return known ? { known } : { place, facts: await load(tx, house ?? (await loadHouse(tx, householdId)), day) };
    });
    if ("known" in found) return send(request, reply, found.known);
    // another request may have reckoned the same while this one waited for its facts
    let answer = kept.find(found.place);
    if (answer === undefined) {
      const { body, etag } = reckon(found.facts);
      const plain = Buffer.from(reply.serialize(body as Record<string, unknown>) as string);
      answer = { etag: etag ?? tagOfBytes(plain), plain, packed: new Map() };
      // room for the packed copies, which are made when somebody takes one
      kept.keep(found.place, answer, Math.ceil(1.5 * plain.byteLength) + NAME_BYTES);
    }
    return send(request, reply, answer);
  };
}

async function send(request: FastifyRequest, reply: FastifyReply, { etag, plain, packed }: KeptAnswer): Promise<FastifyReply> {
  reply.header("etag", etag).type("application/json; charset=utf-8");
  const packing = plain.byteLength < WORTH_PACKING_BYTES ? null : packingFor(request.headers["accept-encoding"]);
  reply.header("vary", "accept-encoding");
  if (packing === null) return reply.send(plain);
  let smaller = packed.get(packing);
  if (smaller === undefined) {
    smaller = await pack(plain, packing);
    packed.set(packing, smaller);
  }
  return reply.header("content-encoding", packing).send(smaller);
}
