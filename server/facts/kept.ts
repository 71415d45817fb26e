/**
 * What was read or reckoned once and is kept in memory for as long as the stamps it was made under are read again: no older than the stored
 * facts, whoever wrote them. The size is bounded; what was asked for longest ago goes first. Nothing of it is stored.
 */
export interface Kept<Value> {
  /** What is kept in this place, if it was made under the same stamp. */
  find(place: Place): Value | undefined;
  /** Keeps a value instead of the one made under an earlier stamp. */
  keep(place: Place, value: Value, bytes: number): void;
  /** Bytes held, as they were given. */
  readonly bytes: number;
}

export interface Place {
  readonly name: string;
  /** Null where it is not known: then nothing is kept. */
  readonly stamp: string | null;
}

interface Entry<Value> {
  readonly stamp: string;
  readonly value: Value;
  readonly bytes: number;
}

export function keptUpTo<Value>(mostBytes: number): Kept<Value> {
  // a Map goes through its entries in the order in which they were put in, so the first is the one asked for longest ago
  const entries = new Map<string, Entry<Value>>();
  let bytes = 0;
  const drop = (name: string): void => {
    bytes -= entries.get(name)?.bytes ?? 0;
    entries.delete(name);
  };
  return {
    find({ name, stamp }) {
      const entry = entries.get(name);
      if (entry === undefined || entry.stamp !== stamp) return undefined;
      entries.delete(name);
      entries.set(name, entry);
      return entry.value;
    },
    keep({ name, stamp }, value, size) {
      drop(name);
      if (stamp === null || size > mostBytes) return;
      entries.set(name, { stamp, value, bytes: size });
      bytes += size;
      for (const [oldest] of entries) {
        if (bytes <= mostBytes) break;
        drop(oldest);
      }
    },
    get bytes() {
      return bytes;
    },
  };
}
