/** Who is asking, and for which household. On loopback the person at the machine is the keeper of one household. */
import type { FastifyRequest } from "fastify";
import type { Db, Tx } from "#db/client.ts";

export interface Member {
  readonly householdId: string;
}

export type MemberOf = (request: FastifyRequest) => Member;

/** The one household of a service that listens on loopback. */
export const HOUSEHOLD_ID = "00000000-0000-4000-8000-000000000001";
export const keeper: MemberOf = () => ({ householdId: HOUSEHOLD_ID });

/** One transaction that sees the rows of the asking member's household and no others. */
export type Within = <T>(request: FastifyRequest, work: (tx: Tx, householdId: string) => Promise<T>) => Promise<T>;

export function within(db: Db, memberOf: MemberOf): Within {
  return (request, work) => {
    const { householdId } = memberOf(request);
    return db.inHousehold(householdId, (tx) => work(tx, householdId));
  };
}
