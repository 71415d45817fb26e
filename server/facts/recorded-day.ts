/** The day of something that was seen or picked: it has been, and its sowing had begun. */
import { refuse, type Problem } from "#shared/kernel/outcome.ts";

export interface Begun {
  readonly sownOn: string | null;
  readonly plantedOutOn: string | null;
  readonly standsSince: number | null;
}

interface RecordedDay {
  readonly field: string;
  readonly day: string;
  readonly today: string;
  /** First day on which it can have been; null where nobody has said. */
  readonly begins: string | null;
  /** What is said of a day to come, and of one before the sowing. */
  readonly toCome: string;
  readonly tooEarly: string;
}

/** Of what stands for years only the year is known, if that. */
export const yearBegan = ({ standsSince }: Begun): string | null => (standsSince === null ? null : `${standsSince}-01-01`);

export function dayProblem({ field, day, today, begins, toCome, tooEarly }: RecordedDay): Problem | undefined {
  if (day > today) return refuse("bad-request", toCome, [{ path: field, message: `must not be after today, ${today}` }]).problem;
  if (begins !== null && day < begins) return refuse("bad-request", tooEarly, [{ path: field, message: `must not be before ${begins}, when the sowing began` }]).problem;
  return undefined;
}
