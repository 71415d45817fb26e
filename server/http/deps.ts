/** What every slice is handed. Nothing is hung on the app: a slice shows in its arguments what it needs. */
import type { FastifyRequest } from "fastify";
import type { Db } from "#db/client.ts";
import type { Clock } from "../clock.ts";
import type { ReferenceBooks } from "../facts/reference.ts";
import type { Answer } from "./answers.ts";
import type { Within } from "./member.ts";

export interface Deps {
  readonly db: Db;
  readonly clock: Clock;
  readonly within: Within;
  /** For what is kept in memory for a household and needs no transaction. */
  readonly householdOf: (request: FastifyRequest) => string;
  /** For reads whose answer follows from stored facts and the day: kept while those are what they were. */
  readonly answer: Answer;
  readonly books: ReferenceBooks;
}
