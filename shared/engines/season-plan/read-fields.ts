/** Reads single fields of an unknown value and notes what is wrong with them, by path, so that all faults of a file come at once. */
import type { FieldFault } from "../../kernel/outcome.ts";

export type Fields = Readonly<Record<string, unknown>>;

export class FieldReader {
  readonly faults: FieldFault[] = [];

  fault(path: string, message: string): void {
    this.faults.push({ path, message });
  }

  object(value: unknown, path: string): Fields {
    if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Fields;
    this.fault(path, "Expected an object.");
    return {};
  }

  list<T>(value: unknown, path: string, read: (item: unknown, path: string) => T): T[] {
    if (value === undefined) return [];
    if (Array.isArray(value)) return value.map((item, i) => read(item, `${path}.${i}`));
    this.fault(path, "Expected a list.");
    return [];
  }

  text(value: unknown, path: string): string {
    if (typeof value === "string" && value !== "") return value;
    this.fault(path, "Expected some text.");
    return "";
  }

  oneOf<T extends string>(value: unknown, path: string, allowed: readonly T[]): T {
    const found = allowed.find((one) => one === value);
    if (found === undefined) this.fault(path, `Expected one of ${allowed.join(", ")}.`);
    return found ?? (allowed[0] as T);
  }

  /** `least` and `most` included. */
  number(value: unknown, path: string, least = 0, most = Number.MAX_SAFE_INTEGER): number {
    if (typeof value === "number" && Number.isFinite(value) && value >= least && value <= most) return value;
    this.fault(path, most === Number.MAX_SAFE_INTEGER ? `Expected a number of ${least} or more.` : `Expected a number from ${least} to ${most}.`);
    return least;
  }

  whole(value: unknown, path: string, least = 0, most = Number.MAX_SAFE_INTEGER): number {
    const read = this.number(value, path, least, most);
    if (Number.isInteger(read)) return read;
    this.fault(path, "Expected a whole number.");
    return least;
  }

  /** One number for every week, or a list with one for each. */
  byWeek(value: unknown, path: string, weeks: number): number[] {
    if (!Array.isArray(value)) return new Array<number>(weeks).fill(this.number(value, path));
    if (value.length !== weeks) this.fault(path, `Expected ${weeks} numbers, one for each week; there are ${value.length}.`);
    return Array.from({ length: weeks }, (_, t) => (t < value.length ? this.number(value[t], `${path}.${t}`) : 0));
  }

  amounts(value: unknown, path: string): Record<string, number> {
    if (value === undefined) return {};
    return Object.fromEntries(Object.entries(this.object(value, path)).map(([id, amount]) => [id, this.number(amount, `${path}.${id}`)]));
  }

  /** Notes every id that is there twice. */
  distinct(items: readonly string[], path: (i: number) => string): void {
    const seen = new Set<string>();
    items.forEach((id, i) => {
      if (seen.has(id)) this.fault(path(i), `"${id}" is there twice.`);
      seen.add(id);
    });
  }

  known(ids: readonly string[], among: ReadonlySet<string>, path: string, what: string): void {
    ids.forEach((id, i) => {
      if (!among.has(id)) this.fault(`${path}.${i}`, `There is no ${what} "${id}".`);
    });
  }
}
