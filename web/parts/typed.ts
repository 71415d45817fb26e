/** What a reader of typed text answers: the value with what to say about it, or what is wrong and what would work. */
export type Typed<T> = { readonly ok: true; readonly value: T; readonly say?: string } | { readonly ok: false; readonly wrong: string; readonly works: string };

export const got = <T>(value: T, say?: string): Typed<T> => (say === undefined ? { ok: true, value } : { ok: true, value, say });
export const wrong = (what: string, works: string): { readonly ok: false; readonly wrong: string; readonly works: string } => ({ ok: false, wrong: what, works });
