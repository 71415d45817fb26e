/**
 * The one way from a page to the service. Answers are read by the contracts, so that a service that drifts is found here, with a path.
 * The contracts weigh more than all else on a page: the first answers are drawn before they have come, and are checked when they have.
 * `read` fetches, `put` makes or changes, `post` asks, `remove` deletes; `./calls.ts` names them for each thing.
 */
import { signal as reactive } from "@preact/signals";
import { takeEarly } from "./early.ts";
import { ApiProblem, problemOf } from "./problem.ts";
import { following } from "./send-state.ts";

type Contracts = typeof import("./contracts.ts");
type Name = keyof Contracts;
type Answer<N extends Name> = Contracts[N]["_output"];

/** Why an answer that is on the page already does not fit it; null while all fit. */
export const misfit = reactive<string | null>(null);

let here: Contracts | null = null;
let coming: Promise<Contracts> | null = null;

/** Fetched once; after that every answer is checked before it is handed on. */
export function contracts(): Promise<Contracts> {
  coming ??= import("./contracts.ts").then((all) => (here = all));
  // without a connection the next entry tries again
  coming.catch(() => (coming = null));
  return coming;
}

/** The parser is let in when the first page has been drawn and read. */
const FIRST_CHECK_MS = 3000;

/** The version of each thing as last read one by one; a change is sent with it. Lists carry no versions. */
const versions = new Map<string, string>();

/** The version of a thing that came within a larger answer. */
export function knowVersion(path: string, version: string): void {
  versions.set(path, version);
}

export async function read<N extends Name>(answer: N, path: string, signal?: AbortSignal): Promise<Answer<N>> {
  const started = await takeEarly(path)?.catch(() => null);
  signal?.throwIfAborted();
  const response = started ?? (await fetchTwice(path, signal ? { signal } : {}));
  const body = await bodyOf(response);
  if (!response.ok || here !== null) return parsed(answer, path, response, body);
  keepVersion(path, response);
  setTimeout(() => void checkLate(answer, body), FIRST_CHECK_MS);
  return body as Answer<N>;
}

async function checkLate(answer: Name, body: unknown): Promise<void> {
  try {
    fitting(await contracts(), answer, body);
  } catch (thrown) {
    if (thrown instanceof ApiProblem) misfit.value = thrown.message;
  }
}

/** Asks something that stores nothing; no send state is shown for it. */
export async function post<N extends Name>(answer: N, path: string, body: unknown, signal?: AbortSignal, headers: Readonly<Record<string, string>> = {}): Promise<Answer<N>> {
  const asked = withBody("POST", body);
  const response = await fetchTwice(path, { ...asked, headers: { ...asked.headers, ...headers }, ...(signal ? { signal } : {}) });
  return parsed(answer, path, response);
}

/** Makes the thing with the id in the path, or changes it where its version is known. Safe to repeat: the id is the key. */
export function put<N extends Name>(answer: N, path: string, body: unknown): Promise<Answer<N>> {
  return send(answer, path, withBody("PUT", body));
}

/** Sends text as it is, such as the rows of a weather record. */
export function putText<N extends Name>(answer: N, path: string, type: string, text: string): Promise<Answer<N>> {
  return send(answer, path, { method: "PUT", headers: { "content-type": type }, body: text });
}

function send<N extends Name>(answer: N, path: string, request: { method: string; headers: Record<string, string>; body: string }): Promise<Answer<N>> {
  const entry = async (): Promise<Answer<N>> => {
    const version = versions.get(path);
    const response = await fetchTwice(path, version === undefined ? request : { ...request, headers: { ...request.headers, "if-match": version } });
    return parsed(answer, path, response);
  };
  return following(entry(), noAnswerCame);
}

export function remove(path: string): Promise<void> {
  const send = async (): Promise<void> => {
    const response = await fetchTwice(path, { method: "DELETE" });
    if (!response.ok) throw problemOf(response.status, await bodyOf(response));
    versions.delete(path);
  };
  return following(send(), noAnswerCame);
}

const noAnswerCame = (problem: unknown): boolean => problem instanceof ApiProblem && problem.noAnswer;

const withBody = (method: string, body: unknown): { method: string; headers: Record<string, string>; body: string } => ({
  method,
  headers: { "content-type": "application/json" },
  body: JSON.stringify(body),
});

/** One repeat when the connection breaks: every call of this client may be sent twice with the same effect. */
async function fetchTwice(path: string, request: RequestInit): Promise<Response> {
  const asked = { ...request, headers: { accept: "application/json", ...request.headers } };
  try {
    return await fetch(path, asked);
  } catch (first) {
    if (isAbort(first)) throw first;
  }
  try {
    return await fetch(path, asked);
  } catch (second) {
    if (isAbort(second)) throw second;
    throw new ApiProblem(0, "No answer from the service. What you typed is still here; try again when it is back.");
  }
}

export const isAbort = (thrown: unknown): boolean => thrown instanceof DOMException && thrown.name === "AbortError";

async function parsed<N extends Name>(answer: N, path: string, response: Response, read?: unknown): Promise<Answer<N>> {
  const body = read === undefined ? await bodyOf(response) : read;
  if (!response.ok) throw problemOf(response.status, body);
  keepVersion(path, response);
  // saved is saved, also where the contract cannot be fetched any more
  const all = await contracts().catch(() => null);
  return all === null ? (body as Answer<N>) : fitting(all, answer, body);
}

function keepVersion(path: string, response: Response): void {
  const version = response.headers.get("etag");
  if (version !== null) versions.set(path, version);
}

/** The answer as its contract reads it; else a problem that names the first place where it does not fit. */
function fitting<N extends Name>(all: Contracts, answer: N, body: unknown): Answer<N> {
  const result = all[answer].safeParse(body);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  throw new ApiProblem(-1, `The answer of the service does not fit this page${issue ? `: ${issue.path.join(".")} ${issue.message}` : ""}.`);
}

async function bodyOf(response: Response): Promise<unknown> {
  if (response.status === 204) return null;
  const text = await response.text();
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
