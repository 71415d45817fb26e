/** Why the server of DATABASE_URL cannot be used, in one sentence for whoever set it. Never the address as a whole: it may hold a password. */

/** Node's names for a server that is not to be reached. */
const NOT_REACHED: ReadonlySet<string> = new Set(["ECONNREFUSED", "ECONNRESET", "EHOSTUNREACH", "ENETUNREACH", "ENOTFOUND", "EAI_AGAIN", "ENOENT", "ETIMEDOUT"]);
/** From the appendix "PostgreSQL Error Codes" of its manual. */
const REFUSED: Readonly<Record<string, string>> = {
  "28P01": "does not take this user and password",
  "28000": "does not let this user in",
  "3D000": "has no database of this name",
  "57P03": "is starting or stopping; try again in a moment",
};

/** The error to stop with: the plain sentence where the reason is known, else what was thrown. */
export function withoutServer(url: string, error: unknown): unknown {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const server = `The PostgreSQL server of DATABASE_URL, ${placeOf(url)},`;
  if (NOT_REACHED.has(code)) return new Error(`${server} cannot be reached. Start it, set DATABASE_URL to where it is, or leave DATABASE_URL out to use the built-in database.`, { cause: error });
  if (REFUSED[code] !== undefined) return new Error(`${server} ${REFUSED[code]}.`, { cause: error });
  return error;
}

function placeOf(url: string): string {
  if (!URL.canParse(url)) return "whose address cannot be read";
  const { hostname, port } = new URL(url);
  return `${hostname === "" ? "localhost" : hostname} port ${port === "" ? "5432" : port}`;
}
