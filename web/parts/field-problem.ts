/** What is wrong with a form, as data: the view of it stands in problem-note.tsx. */

/** One bad field of a form: the id of its control and the words that also stand below it. */
export interface FieldProblem {
  readonly field: string;
  readonly text: string;
}

const NUMBERS = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"];

/** “Two things to put right before this sowing is saved”. */
export function leadFor(faults: number, what: string): string {
  return `${NUMBERS[faults] ?? faults} ${faults === 1 ? "thing" : "things"} to put right before ${what} is saved`;
}
