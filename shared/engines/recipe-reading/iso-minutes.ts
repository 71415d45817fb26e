/** ISO 8601 durations as pages write them: PT20M, PT1H30M, P1DT2H, P0DT0H20M, in any case of letters. Null for anything else. */
const PER_UNIT_MIN: Readonly<Record<string, number>> = { D: 1440, H: 60, M: 1, S: 1 / 60 };
const LONGEST_TEXT = 40;

export function isoMinutes(text: string): number | null {
  const duration = text.trim().toUpperCase();
  if (duration.length > LONGEST_TEXT || !/^P(?:\d+D)?(?:T(?:\d+H)?(?:\d+M)?(?:\d+S)?)?$/.test(duration) || !/\d/.test(duration)) return null;
  let minutes = 0;
  for (const [, amount, unit] of duration.matchAll(/(\d+)([DHMS])/g)) minutes += Number(amount) * (PER_UNIT_MIN[unit ?? ""] ?? 0);
  return Math.round(minutes);
}
