/** The marks of the clock over the lanes: round times, never so near each other that their figures touch. Pure. */

/** Minutes between two marks: 15, 30, 60 or more, so that `least` pixels stay between them. */
export function markEvery(endMin: number, width: number, least: number): number {
  return [15, 30, 60, 120].find((every) => (every / endMin) * width >= least) ?? 240;
}

/**
 * Minutes from the start of the day at which a mark stands: the start itself, then the round times of the clock. `startMin` is the
 * start in minutes after midnight. A round time too near the start gives way.
 */
export function clockMarks(startMin: number, endMin: number, every: number): number[] {
  const first = (every - (startMin % every)) % every;
  const round: number[] = [];
  for (let minute = first; minute <= endMin; minute += every) if (minute >= every) round.push(minute);
  return [0, ...round];
}
