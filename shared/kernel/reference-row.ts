/**
 * A row of a reference table as the database hands it back, and the readers that turn its untyped facts into a typed row.
 * A table that does not fit is a mistake in seed-data, so reading it stops with every fault named, not with the first.
 */
export interface ReferenceRow {
  /** Folder and file of seed-data: preservation/canning. */
  readonly kind: string;
  readonly key: string;
  readonly facts: Readonly<Record<string, unknown>>;
  readonly source: string;
}

/** Reads one value or throws RangeError with the path in it. */
export type Read<T> = (value: unknown, path: string) => T;
export type Shape<T> = { readonly [K in keyof T]: Read<T[K]> };

const MOST_FAULTS_SHOWN = 20;

/** All rows of one kind. Key and source stand beside the facts; inside the facts they may be missing. */
export function readRows<T>(rows: readonly ReferenceRow[], kind: string, shape: Shape<T>): T[] {
  const faults: string[] = [];
  const read: T[] = [];
  for (const row of rows) {
    if (row.kind !== kind) continue;
    try {
      read.push(record(shape)({ ...row.facts, key: row.key, source: row.source }, row.key));
    } catch (fault) {
      faults.push((fault as Error).message);
    }
  }
  if (faults.length > 0) throw new RangeError(`${kind}: ${faults.slice(0, MOST_FAULTS_SHOWN).join("; ")}`);
  return read;
}

export const text: Read<string> = (value, path) => {
  if (typeof value === "string" && value !== "") return value;
  throw new RangeError(`${path} must be a text`);
};

export const amount: Read<number> = (value, path) => {
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw new RangeError(`${path} must be a number`);
};

export const yesOrNo: Read<boolean> = (value, path) => {
  if (typeof value === "boolean") return value;
  throw new RangeError(`${path} must be true or false`);
};

/** Low and high, rising. */
export const span: Read<readonly [number, number]> = (value, path) => {
  const [low, high, more] = listOf(amount)(value, path);
  if (low === undefined || high === undefined || more !== undefined || low > high) throw new RangeError(`${path} must be a low and a high number`);
  return [low, high];
};

export function oneOf<const T extends string>(words: readonly T[]): Read<T> {
  return (value, path) => {
    const word = words.find((w) => w === value);
    if (word === undefined) throw new RangeError(`${path} must be one of ${words.join(", ")}`);
    return word;
  };
}

/** A missing value reads as null. */
export function orNull<T>(read: Read<T>): Read<T | null> {
  return (value, path) => (value === null || value === undefined ? null : read(value, path));
}

export function listOf<T>(read: Read<T>): Read<readonly T[]> {
  return (value, path) => {
    if (!Array.isArray(value)) throw new RangeError(`${path} must be a list`);
    return value.map((item: unknown, i) => read(item, `${path}.${i}`));
  };
}

export function record<T>(shape: Shape<T>): Read<T> {
  return (value, path) => {
    if (typeof value !== "object" || value === null) throw new RangeError(`${path} must be a record`);
    const facts = value as Readonly<Record<string, unknown>>;
    const read: Partial<T> = {};
    for (const name in shape) read[name] = shape[name](facts[name], `${path}.${name}`);
    return read as T;
  };
}
