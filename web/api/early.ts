/** Answers that were asked for before the page's code was there (public/early.js); each serves once, later calls ask anew. */

type Early = ReadonlyMap<string, Promise<Response>> & { delete(path: string): boolean };

export function takeEarly(path: string): Promise<Response> | null {
  const early = (globalThis as { early?: Early }).early;
  const answer = early?.get(path);
  if (!early || !answer) return null;
  early.delete(path);
  // a broken connection is tried again the usual way, with its usual words
  return answer;
}
