/** What initdb and the server say when they do not start, in words that tell the person at the machine what to do. */

const ELSEWHERE = "set DATABASE_URL to a PostgreSQL server";

const SENTENCES: readonly (readonly [RegExp, (folder: string) => string])[] = [
  [
    /could not look up effective user ID/,
    () => `The account Stillroom runs under has no entry in the list of users (a container started with --user and a bare number, perhaps). Start it under an account that exists, or ${ELSEWHERE}.`,
  ],
  [/cannot be run as root|"root" execution/, () => `The built-in PostgreSQL does not run as root. Start Stillroom as an ordinary user, or ${ELSEWHERE}.`],
  [/administrative permissions is not permitted/, () => `The built-in PostgreSQL does not run as an administrator. Start Stillroom from an ordinary account, or ${ELSEWHERE}.`],
  [/No space left on device/, (folder) => `The disk that holds ${folder} is full. Make room and start again; nothing that was confirmed is lost.`],
  [/Permission denied/, (folder) => `The database may not write in ${folder}. Give the account that Stillroom runs under that folder, or set STILLROOM_DATA to another one.`],
  [/Read-only file system/, (folder) => `The folder ${folder} cannot be written. Set STILLROOM_DATA to one that can.`],
];

export function plainWords(said: string, folder: string): string {
  const known = SENTENCES.find(([sign]) => sign.test(said));
  return known ? known[1](folder) : `The database in ${folder} did not start. PostgreSQL says: ${lastWords(said)}`;
}

/** The lines that say why, or else the last ones. */
function lastWords(said: string): string {
  const lines = said.split("\n").map((line) => line.trim()).filter((line) => line !== "");
  const reasons = lines.filter((line) => /FATAL|PANIC|error:/.test(line));
  return (reasons.length > 0 ? reasons : lines).slice(-3).join(" / ") || "nothing";
}

export const inUse = (folder: string, pid: number | null): string =>
  `The data folder ${folder} is already in use by another Stillroom${pid === null ? "" : ` (process ${pid})`}. Use that one, or stop it first, or set STILLROOM_DATA to another folder.`;

export const heldByStranger = (folder: string, pid: number, file: string): string =>
  `The data folder ${folder} says that process ${pid} still runs its database, but no database answers. If no Stillroom is running on this machine, remove ${file} and start again.`;
