/** Requests are read by the zod contracts; what does not fit is refused with every bad field named. */
import type { FastifySchemaCompiler } from "fastify";
import type { z } from "zod";
import { Problem } from "#shared/contracts/problem.ts";
import type { FieldFault } from "#shared/kernel/outcome.ts";
import { Refusal } from "../problems.ts";
import { faultsOf, inPlainWords, nulFaults } from "./plain-words.ts";

const PARTS: Readonly<Record<string, string>> = { body: "body", querystring: "question after the ?", params: "address", headers: "headers" };

export const readByContract: FastifySchemaCompiler<z.ZodType> = ({ schema, httpPart }) => {
  return (data) => {
    const read = schema.safeParse(data, { error: inPlainWords });
    const faults: FieldFault[] = read.success ? (httpPart === "body" ? nulFaults(read.data) : []) : faultsOf(read.error.issues);
    if (faults.length === 0) return { value: read.data };
    return { error: badFields(faults, `The ${PARTS[httpPart ?? "body"] ?? "request"} does not fit.`) };
  };
};

/** A refusal of bad fields; the sentence says the first fault, so that it helps where fields are not shown. */
export function badFields(fields: readonly FieldFault[], lead = "Something in the request does not fit."): Refusal {
  const [first] = fields;
  const said = first ? ` ${first.path === "" ? "It " : `${first.path}: `}${first.message.replace(/\.$/, "")}${fields.length > 1 ? `, and ${fields.length - 1} more` : ""}.` : "";
  return new Refusal({ code: "bad-request", detail: `${lead}${said}`, fields });
}

const problemAnswer = (description: string) => ({ description, content: { "application/problem+json": { schema: Problem } } });

/** What any route may answer instead; spread into a route's `response`. */
export const refusals = {
  "4xx": problemAnswer("The request is refused; fields says what does not fit and where"),
  "5xx": problemAnswer("The service could not answer"),
} as const;
