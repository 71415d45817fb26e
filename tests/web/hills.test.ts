/**
 * Hills and pegs of the year sheet. A hill may never rise above the values it runs through: the curve is the monotone cubic of
 * Fritsch and Carlson, “Monotone piecewise cubic interpolation”, SIAM Journal on Numerical Analysis 17 (1980), which has no overshoot.
 */
import { describe, expect, it } from "vitest";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { areaPath, hillPoints, linePath, pegsPath, runsOf, stepPath, type Ground, type Point } from "#web/parts/hills.ts";

const BASE = 100;
const ground = (now = 0): Ground => ({ x: (week) => 10 * week, y: (grams) => BASE - grams / 100, base: BASE, weeks: 52, now });

/** Bézier pieces of a path: start, two controls, end. */
function pieces(path: string): [Point, Point, Point, Point][] {
  const numbers = [...path.matchAll(/([MLCHVZ])([^MLCHVZ]*)/g)].map(([, letter, rest]) => ({ letter, values: (rest ?? "").match(/-?\d+(?:\.\d+)?/g)?.map(Number) ?? [] }));
  let at: Point = [0, 0];
  return numbers.flatMap(({ letter, values }) => {
    const points = Array.from({ length: Math.floor(values.length / 2) }, (_, i): Point => [values[2 * i] as number, values[2 * i + 1] as number]);
    const start = at;
    at = points[points.length - 1] ?? at;
    return letter === "C" ? [[start, ...points] as [Point, Point, Point, Point]] : [];
  });
}

const bezier = (a: number, b: number, c: number, d: number, t: number): number => (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;

describe("a hill", () => {
  it("stays between the values of neighbouring weeks, however they jump", () => {
    const random = seededRandom(7);
    let checked = 0;
    for (let n = 0; n < 40; n++) {
      const values = Array.from({ length: 52 }, () => (random.next() < 0.3 ? 0 : random.next() * 8000));
      for (const run of runsOf(values, 0, 60)) {
        for (const [a, b, c, d] of pieces(linePath(hillPoints(values, run, ground())))) {
          for (const t of [0.1, 0.3, 0.5, 0.7, 0.9]) {
            const y = bezier(a[1], b[1], c[1], d[1], t);
            // a tenth of a pixel for the digits that the path is written with
            expect(y).toBeGreaterThanOrEqual(Math.min(a[1], d[1]) - 0.1);
            expect(y).toBeLessThanOrEqual(Math.max(a[1], d[1]) + 0.1);
            checked++;
          }
        }
      }
    }
    expect(checked).toBeGreaterThan(3000);
  });

  it("begins at the seam when it is on in today's week, else a fifth of a week before its first", () => {
    const values = [0, 0, 500, 900, 0, 0];
    expect(hillPoints(values, { first: 2, last: 3 }, { ...ground(2), weeks: 6 })[0]).toEqual([20, 95]);
    expect(hillPoints(values, { first: 2, last: 3 }, { ...ground(0), weeks: 6 })[0]).toEqual([18, BASE]);
  });

  it("falls to the ground after its last week, and is cut by the end of the year", () => {
    const points = (values: number[], last: number) => hillPoints(values, { first: 1, last }, { ...ground(0), weeks: 6 });
    expect(points([0, 500, 900, 0, 0, 0], 2).at(-1)).toEqual([32, BASE]);
    expect(points([0, 500, 500, 500, 500, 900], 5).at(-1)).toEqual([60, 91]);
  });

  it("closes its area on the ground line", () => {
    const path = areaPath(hillPoints([0, 500, 900, 0, 0, 0], { first: 1, last: 2 }, { ...ground(0), weeks: 6 }), BASE);
    expect(path).toMatch(/^M8,100/);
    expect(path).toMatch(/Z$/);
  });
});

describe("runs", () => {
  it("are the unbroken weeks from today on with enough in them", () => {
    expect(runsOf([90, 90, 10, 90, 90, 0, 90], 1, 60)).toEqual([
      { first: 1, last: 1 },
      { first: 3, last: 4 },
      { first: 6, last: 6 },
    ]);
    expect(runsOf([0, 0], 0, 60)).toEqual([]);
  });
});

describe("what was picked", () => {
  it("is a bar 56 % of a week wide and as high as its weight", () => {
    expect(pegsPath([0, 2000], ground())).toBe("M12.2 100.0V80.0H17.8V100.0Z");
    expect(pegsPath([0, 0], ground())).toBe("");
  });
});

describe("the eating line", () => {
  it("steps down to the ground in a week away and up again", () => {
    expect(stepPath([6000, 0, 6000], ground())).toBe("M0.0 40.0H10.0V100.0H20.0V40.0H30.0");
    expect(stepPath([6000, 6000], ground())).toBe("M0.0 40.0H20.0");
  });
});
