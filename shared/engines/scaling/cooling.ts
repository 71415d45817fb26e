/**
 * Question: into how many dishes must so much hot food go, so that it can be cold in time? Layers no deeper than 2 in, 5 cm (University of Wisconsin Extension;
 * Clemson extension column; North Dakota State University Extension allows 3). The limits themselves: FDA Food Code 3-501.14 (A).
 */
const DEPTH_CM = 5;
/** A roasting dish of 20 × 30 cm. Common practice, no source. */
const DISH_CM2 = 600;
const DISH_LITRES = (DISH_CM2 * DEPTH_CM) / 1000;

export const dishesToCool = (litres: number): number => Math.max(1, Math.ceil(litres / DISH_LITRES - 1e-9));

/** A sentence of limits; that it will be cold by then nobody can promise. `litres`: 0 where they are not known. */
export function coolingWords(litres: number): string {
  const many = dishesToCool(litres);
  const dishes = litres === 0 ? "" : `, here ${many} ${many === 1 ? "dish" : "dishes"} of 20 × 30 cm or as many small boxes,`;
  return `A larger amount cools more slowly: divide it into layers no deeper than ${DEPTH_CM} cm${dishes} and stand them in cold water. From 57 °C to 21 °C within 2 hours and to 5 °C within 6 in all is a limit, not a promise; what was not cold in time is thrown away.`;
}
