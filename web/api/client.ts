/**
 * The one way from a page to the service. Answers are parsed with the contracts, so that a service that drifts is found here,
 * with a path. `read` fetches, `put` makes or changes, `post` asks, `remove` deletes; `./calls.ts` names them for each thing.
 */
import { ApiProblem, problemOf } from "./problem.ts";
import { following } from "./send-state.ts";

/** A contract of shared/contracts: reads an answer, or names the first place where it does not fit. */
interface Contract<T> {
  safeParse(body: unknown): { readonly success: true; readonly data: T } | { readonly success: false; readonly error: { readonly issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[] } };
}

/** The version of each thing as last read one by one; a change is sent with it. Lists carry no versions. */
const versions = new Map<string, string>();

export async function read<T>(answer: Contract<T>, path: string, signal?: AbortSignal): Promise<T> {
  const response = await fetchTwice(path, signal ? { signal } : {});
  return parsed(answer, path, response);
}

/** Asks something that stores nothing; no send state is shown for it. */
export async function post<T>(answer: Contract<T>, path: string, body: unknown, signal?: AbortSignal): Promise<T> {
  const response = await fetchTwice(path, { ...withBody("POST", body), ...(signal ? { signal } : {}) });
  return parsed(answer, path, response);
}

/** Makes the thing with the id in the path, or changes it where its version is known. Safe to repeat: the id is the key. */
export function put<T>(answer: Contract<T>, path: string, body: unknown): Promise<T> {
  return send(answer, path, withBody("PUT", body));
}

/** Sends text as it is, such as the rows of a weather record. */
export function putText<T>(answer: Contract<T>, path: string, type: string, text: string): Promise<T> {
  return send(answer, path, { method: "PUT", headers: { "content-type": type }, body: text });
}

function send<T>(answer: Contract<T>, path: string, request: { method: string; headers: Record<string, string>; body: string }): Promise<T> {
  const entry = async (): Promise<T> => {
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

async function parsed<T>(answer: Contract<T>, path: string, response: Response): Promise<T> {
  const body = await bodyOf(response);
  if (!response.ok) throw problemOf(response.status, body);
  const version = response.headers.get("etag");
  if (version !== null) versions.set(path, version);
  const result = answer.safeParse(body);
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
