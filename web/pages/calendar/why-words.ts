/** The reason of a way beside its row: what it makes and the work it takes stand in columns of their own, and are not said twice. */
import type { Pairing } from "#shared/contracts/calendar.ts";
import { madeWords } from "#shared/kernel/made-words.ts";
import { minutesWords } from "#shared/kernel/words.ts";

export function whyBesideRow({ why, makes, handsOnMin }: Pick<Pairing, "why" | "makes" | "handsOnMin">): string {
  const made = escaped(madeWords(makes.amount, makes.unit));
  return why
    .replace(new RegExp(`(?: and makes|[;:] [^;:]*? makes) ${made}(, which keeps?)?`), (_, keeps: string | undefined) => (keeps === undefined ? "" : "; keeps"))
    .replace(new RegExp(`; ${escaped(minutesWords(handsOnMin))} of work(, less)?`), (_, less: string | undefined) => (less === undefined ? "" : ", less work"));
}

/** The amounts stand in the reason where it takes of one crop alone. */
export const usesGoWithoutSaying = ({ why, uses }: Pick<Pairing, "why" | "uses">): boolean => uses.length === 1 && why.startsWith("Takes ");

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
