export type InTurn = <T>(householdId: string, work: () => Promise<T>) => Promise<T>;

/** One after another for each household, before a connection is taken: who waits for a household's lock would otherwise hold what others need. */
export function inTurn(): InTurn {
  const last = new Map<string, Promise<unknown>>();
  return async (householdId, work) => {
    const mine = (last.get(householdId) ?? Promise.resolve()).then(work, work);
    last.set(householdId, mine);
    try {
      return await mine;
    } finally {
      if (last.get(householdId) === mine) last.delete(householdId);
    }
  };
}
