/** Round figures of an axis, against the ticks of d3-scale (scaleLinear().ticks), a reference library. */
import { scaleLinear } from "d3-scale";
import { describe, expect, it } from "vitest";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { roundSteps } from "#web/parts/round-steps.ts";

describe("round steps", () => {
  it("are those of the reference library, for five hundred ends and two to six steps", () => {
    const random = seededRandom(5);
    let reached = 0;
    for (let n = 0; n < 500; n++) {
      const most = 10 ** (random.next() * 6 - 2);
      const wanted = 2 + random.below(5);
      const reference = scaleLinear([0, most], [0, 1]).ticks(wanted).filter((tick) => tick > 0);
      const steps = roundSteps(most, wanted);
      expect(steps).toHaveLength(reference.length);
      for (const [i, step] of steps.entries()) expect(step).toBeCloseTo(reference[i] as number, 9);
      reached++;
    }
    expect(reached).toBe(500);
  });

  it("are none for nothing", () => {
    expect(roundSteps(0, 3)).toEqual([]);
    expect(roundSteps(Number.NaN, 3)).toEqual([]);
  });
});
