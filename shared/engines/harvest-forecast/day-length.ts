/**
 * Hours of daylight from latitude and day of the year, by the CBM model.
 * Source: Forsythe et al. 1995, Ecological Modelling 80:87–95, equations 1–3.
 */

/** Sunrise to sunset with refraction, as almanacs give it, degrees below the horizon (Forsythe et al. 1995, table 1). */
export const SUNSET_DEG = 0.8333;

/**
 * Hours; latitude in degrees, north positive; `dayOfYear` 1 on 1 January; `sunBelowDeg` how far the sun's centre stands
 * below the horizon at either end of the day (0.8333 sunset, 6 civil twilight, 0 the sun's centre on the horizon).
 */
export function dayLengthHours(latitudeDeg: number, dayOfYear: number, sunBelowDeg: number = SUNSET_DEG): number {
  const revolution = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const declination = Math.asin(0.39795 * Math.cos(revolution));
  const latitude = (latitudeDeg * Math.PI) / 180;
  const edge = Math.sin((sunBelowDeg * Math.PI) / 180) + Math.sin(latitude) * Math.sin(declination);
  const cosine = edge / (Math.cos(latitude) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(Math.min(1, Math.max(-1, cosine)));
}
