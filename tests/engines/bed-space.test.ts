/** Room in a bed, worked by hand; weeks by ISO 8601 (2027-06-14 is the Monday of week 24, 2027-07-05 that of week 27). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freeM2, shortagesOf, shortageWords, squareMetresOf, type Occupant } from "#shared/engines/bed-space/index.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";

const amount = (given: Partial<{ rowM: number; plants: number; areaM2: number }>) => ({ rowM: null, plants: null, areaM2: null, ...given });
const stands = (m2: number, from: string, until: string | null): Occupant => ({ m2, fromDay: dayNumber(from), untilDay: until === null ? null : dayNumber(until) });

describe("room taken", () => {
  const bean = { plant: 10, row: 45 };
  it("is rows times their distance, plants times the room of one, or the area itself", () => {
    expect(squareMetresOf(amount({ rowM: 6 }), bean)).toBeCloseTo(2.7, 9); // 6 m × 0.45 m
    expect(squareMetresOf(amount({ plants: 40 }), bean)).toBeCloseTo(1.8, 9); // 40 × 0.10 m × 0.45 m
    expect(squareMetresOf(amount({ areaM2: 1.5 }), bean)).toBe(1.5);
  });
  it("is not known without spacing, unless the area is given", () => {
    expect(squareMetresOf(amount({ rowM: 6 }), null)).toBeNull();
    expect(squareMetresOf(amount({ areaM2: 1.5 }), null)).toBe(1.5);
  });
});

describe("a bed of 4 m² with 2.5 m² of peas until 5 July", () => {
  const peas = stands(2.5, "2027-03-15", "2027-07-05");
  const beans = (from: string, until = "2027-10-01") => shortagesOf({ bedM2: 4, sowing: stands(2.7, from, until), others: [peas] });

  it("lacks 1.2 m² for beans sown before the peas are cleared, and says in which weeks", () => {
    const found = beans("2027-06-14");
    expect(found).toMatchObject([{ firstWeek: "2027-W24", lastWeek: "2027-W26" }]);
    expect(found[0]?.m2).toBeCloseTo(1.2, 9);
    expect(shortageWords(found[0]!).replaceAll("\u00a0", " ")).toBe("Needs 1.2 m² more than the bed has in weeks 24–26.");
  });
  it("lacks nothing from the day they are cleared", () => {
    expect(beans("2027-07-05")).toEqual([]);
    expect(beans("2027-07-04")).toMatchObject([{ firstWeek: "2027-W26", lastWeek: "2027-W26" }]);
  });
  it("has 1.5 m² free while they stand and 4 m² after", () => {
    expect(freeM2(4, [peas], dayNumber("2027-07-04"))).toBe(1.5);
    expect(freeM2(4, [peas], dayNumber("2027-07-05"))).toBe(4);
  });
  it("tells two shortages apart", () => {
    const leeks = stands(2, "2027-08-23", null);
    expect(shortagesOf({ bedM2: 4, sowing: stands(2.7, "2027-06-14", "2027-09-06"), others: [peas, leeks] }).map((s) => [s.firstWeek, s.lastWeek])).toEqual([["2027-W24", "2027-W26"], ["2027-W34", "2027-W35"]]);
  });
  it("looks a year ahead where the sowing stands for good", () => {
    // 2027-11-01 is the Monday of week 44; 52 weeks on is week 43 of 2028
    expect(shortagesOf({ bedM2: 4, sowing: stands(5, "2027-11-01", null), others: [] })).toMatchObject([{ firstWeek: "2027-W44", lastWeek: "2028-W43", m2: 1 }]);
  });
});

describe("in every bed", () => {
  const occupant = fc.record({ m2: fc.integer({ min: 1, max: 40 }).map((n) => n / 10), fromDay: fc.integer({ min: 20_000, max: 20_200 }), days: fc.option(fc.integer({ min: 1, max: 200 })) })
    .map(({ days, ...rest }): Occupant => ({ ...rest, untilDay: days === null ? null : rest.fromDay + days }));

  it("a bigger bed never lacks more, and what stands at other times changes nothing", () => {
    let short = 0;
    fc.assert(
      fc.property(occupant, fc.array(occupant, { maxLength: 4 }), fc.integer({ min: 1, max: 80 }), (sowing, others, tenths) => {
        const bedM2 = tenths / 10;
        const worst = (m2: number, all: readonly Occupant[]) => Math.max(0, ...shortagesOf({ bedM2: m2, sowing, others: all }).map((s) => s.m2));
        expect(worst(bedM2 + 1, others)).toBeLessThanOrEqual(worst(bedM2, others));
        const earlier: Occupant = { m2: 50, fromDay: sowing.fromDay - 300, untilDay: sowing.fromDay };
        expect(shortagesOf({ bedM2, sowing, others: [...others, earlier] })).toEqual(shortagesOf({ bedM2, sowing, others }));
        if (worst(bedM2, others) > 0) short++;
      }),
      { numRuns: 150, seed: 21 },
    );
    expect(short).toBeGreaterThan(40);
  });

  it("free room and room taken add up to the bed while it is not overfull", () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.array(occupant, { maxLength: 5 }), fc.integer({ min: 20_000, max: 20_400 }), (occupants, day) => {
        const taken = occupants.filter((one) => one.fromDay <= day && (one.untilDay ?? Infinity) > day).reduce((sum, one) => sum + one.m2, 0);
        expect(freeM2(100, occupants, day)).toBeCloseTo(100 - taken, 9);
        if (taken > 0) checked++;
      }),
      { numRuns: 150, seed: 22 },
    );
    expect(checked).toBeGreaterThan(40);
  });
});
