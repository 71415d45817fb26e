/** What seed-data says, read and checked whole before any of it is stored: a book with a fault in it is not a book. */
import type { CropFacts } from "#shared/kernel/crop-facts.ts";

export interface Source {
  readonly id: string;
  readonly text: string;
  readonly licence: string | null;
}

export interface ReferenceRow {
  /** Folder and file of seed-data: preservation/canning, eats. */
  readonly kind: string;
  readonly key: string;
  /** The row as the file has it, key and source included. */
  readonly facts: Readonly<Record<string, unknown>>;
  /** Ids in the register, a space between several. */
  readonly source: string;
}

export interface BookRecipe {
  readonly id: string;
  readonly recipe: Readonly<Record<string, unknown>>;
  /** Ids in the register, each with the passage that this recipe leans on. */
  readonly sources: readonly { readonly id: string; readonly text: string }[];
}

export interface Book {
  readonly sources: readonly Source[];
  readonly crops: readonly CropFacts[];
  readonly rows: readonly ReferenceRow[];
  readonly recipes: readonly BookRecipe[];
}

/** Where in a file; the first line is 1. Asked for only when something is wrong there: finding a line in a long file takes its time. */
export type Place = () => { readonly file: string; readonly line: number };

const MOST_SHOWN = 20;

/** Collects what is wrong, so that one run names every fault and not only the first. */
export class Faults {
  readonly #found: string[] = [];

  add(place: Place, what: string): void {
    const { file, line } = place();
    this.#found.push(`${file}:${line}: ${what}`);
  }

  throwIfAny(): void {
    if (this.#found.length === 0) return;
    const more = this.#found.length - MOST_SHOWN;
    throw new Error(`seed-data cannot be loaded:\n${this.#found.slice(0, MOST_SHOWN).join("\n")}${more > 0 ? `\nand ${more} more` : ""}`);
  }
}

/** The register of publications: every row must name one that is in it, whichever file brought it. */
export class Register {
  readonly #sources = new Map<string, Source & { readonly place: Place }>();

  add(source: Source, place: Place, faults: Faults): void {
    if (source.id === "" || source.text === "") return faults.add(place, "a source needs an id and a text");
    const held = this.#sources.get(source.id);
    if (held === undefined) this.#sources.set(source.id, { ...source, place });
    else if (held.text !== source.text) {
      const { file, line } = held.place();
      faults.add(place, `the source ${source.id} has another text in ${file}:${line}`);
    }
  }

  /** A recipe cites passages of publications that the tables may have brought already: then the publication stays as it is. */
  cite(source: Source, place: Place, faults: Faults): void {
    if (!this.#sources.has(source.id)) this.add(source, place, faults);
  }

  /** The ids that a cell names; a fault for each that is not in the register, and for none at all. */
  named(cell: unknown, place: Place, faults: Faults): string[] {
    if (typeof cell !== "string" || cell.trim() === "") {
      faults.add(place, "a row needs a source");
      return [];
    }
    const ids = this.#sources.has(cell) ? [cell] : cell.trim().split(/\s+/);
    for (const id of ids) if (!this.#sources.has(id)) faults.add(place, `the source ${id} is not in the register`);
    return ids;
  }

  textOf(id: string): string {
    return this.#sources.get(id)?.text ?? "";
  }

  all(): Source[] {
    return [...this.#sources.values()].map(({ id, text, licence }) => ({ id, text, licence }));
  }
}
