/** The frame of a cook day as typed: what is understood, and what is answered to what cannot be. Today is Monday 26 July 2027. */
import { describe, expect, it } from "vitest";
import { bodyOf, withDish } from "#web/pages/cook-day/day-body.ts";
import { fieldAt, frameFields, readFrame, timeIn, type DayFrame, type FrameFields } from "#web/pages/cook-day/day-frame.ts";

const TODAY = "2027-07-26";
const OVEN = { trays: 2, preheatMin: 15, changeMin: 10 };
const FRAME: DayFrame = {
  on: "2027-08-01",
  startsAt: "10:00",
  endsBy: "15:30",
  cooks: 1,
  kitchen: { ovens: [OVEN], burners: 4, pots: 2, sinks: 1 },
  unavailable: [{ what: "cook", fromMin: 120, toMin: 150, why: "lunch" }],
  title: "Beans and bread",
};
const FIELDS = frameFields(FRAME, TODAY);
const DISHES = [{ recipeId: "1fd3406d-682e-5183-bd83-fd9e14853bed", batches: 2 }];
const read = (change: Partial<FrameFields>) => readFrame({ ...FIELDS, ...change }, TODAY, DISHES, FRAME.kitchen);
const faults = (change: Partial<FrameFields>): string[] => {
  const answer = read(change);
  return answer.ok ? [] : answer.faults.map(({ text }) => text);
};

describe("the frame of a day", () => {
  it("comes back as it is stored, with its dishes, its times away and its name", () => {
    expect(read({})).toEqual({ ok: true, body: { ...FRAME, dishes: DISHES } });
  });

  it("shows the day and the times away as people write them", () => {
    expect(FIELDS).toMatchObject({ on: "1\u00a0August", startsAt: "10:00", away: [{ from: "12:00", to: "12:30", why: "lunch" }] });
  });

  it("has no end where none is written", () => {
    expect(read({ endsBy: "  " })).not.toHaveProperty("body.endsBy");
    expect(read({ title: " " })).not.toHaveProperty("body.title");
  });

  it.each([
    ["9:00", "09:00"],
    ["9", "09:00"],
    ["9.30", "09:30"],
    ["9h30", "09:30"],
    ["0930", "09:30"],
    [" 14:05 ", "14:05"],
    ["9 h", "09:00"],
    ["00:00", "00:00"],
    ["23:59", "23:59"],
  ])("reads “%s” as %s", (typed, time) => {
    expect(timeIn(typed)).toBe(time);
  });

  it("takes nothing else for a time", () => {
    for (const typed of ["", "24:00", "9:60", "noon", "9:5", "-9:00", "9:00:00"]) expect(timeIn(typed)).toBeNull();
  });
});

describe("what cannot be", () => {
  it("31 April is answered with the days that are there", () => {
    expect(faults({ on: "31 April" })).toEqual(["Day: April has no 31st. Write 30 April or 1 May."]);
  });

  it("an end before or at the beginning is answered with the beginning", () => {
    const after = "Done by: must be after 10:00, when the day begins, and on the same day";
    expect(faults({ endsBy: "9:00" })).toEqual([after]);
    expect(faults({ endsBy: "10:00" })).toEqual([after]);
    expect(faults({ endsBy: "10:01" })).toEqual([]);
  });

  it("a time that is none is answered with one", () => {
    expect(faults({ startsAt: "morning" })).toEqual(["Begin at: write a time such as 9:00"]);
    expect(faults({ endsBy: "25:00" })).toEqual(["Done by: write a time such as 9:00, or leave it empty for no end"]);
  });

  // least and most as in shared/contracts/cook-days.ts and kitchen.ts
  it.each([
    ["cooks", 1, 6],
    ["burners", 0, 12],
    ["pots", 0, 20],
    ["sinks", 0, 6],
    ["ovens", 0, 4],
    ["trays", 1, 12],
  ] as const)("%s are whole and from %d to %d", (name, least, most) => {
    const words: unknown = expect.stringContaining(`a whole number from ${least} to ${most} is needed`);
    expect(faults({ [name]: String(least) })).toEqual([]);
    expect(faults({ [name]: String(most) })).toEqual([]);
    for (const typed of [String(least - 1), String(most + 1), "", "some", "1.5"]) expect(faults({ [name]: typed })).toEqual([words]);
  });

  it("everything is said at once", () => {
    const answer = read({ on: "soon", startsAt: "", cooks: "0", burners: "many" });
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.faults.map(({ field }) => field).sort()).toEqual(["burners", "cooks", "on", "startsAt"]);
  });
});

describe("times away", () => {
  const away = (from: string, to: string, why = "") => ({ away: [{ from, to, why }] });

  it("stay at their clock time when the day begins at another", () => {
    expect(read({ startsAt: "9:00" })).toMatchObject({ ok: true, body: { unavailable: [{ fromMin: 180, toMin: 210, why: "lunch" }] } });
  });

  it("are several, or none; an empty row is none", () => {
    expect(read({ away: [] })).toMatchObject({ ok: true, body: { unavailable: [] } });
    expect(read({ away: [...FIELDS.away, { from: "", to: " ", why: "" }, { from: "14", to: "14:10", why: "" }] })).toMatchObject({ body: { unavailable: [{ fromMin: 120 }, { what: "cook", fromMin: 240, toMin: 250 }] } });
  });

  it("lie in the day and end after they begin; each fault names its row", () => {
    const named = (change: Partial<FrameFields>) => {
      const answer = read(change);
      return answer.ok ? [] : answer.faults.map(({ field, text }) => `${field} ${text}`);
    };
    expect(named(away("9:30", "11"))).toEqual(["away-0-from Away from: must not be before 10:00, when the day begins"]);
    expect(named(away("12:30", "12:00"))).toEqual(["away-0-to Away until: must be after 12:30"]);
    expect(named(away("noon", ""))).toEqual(["away-0-from Away from: write a time such as 9:00", "away-0-to Away until: write a time such as 9:00"]);
    expect(named({ away: [...FIELDS.away, { from: "13:00", to: "", why: "" }] })).toEqual(["away-1-to Away until: write a time such as 9:00"]);
    expect(named(away("", "", "school run"))).toHaveLength(2);
  });
});

describe("ovens", () => {
  const second = { trays: 1, preheatMin: 5, changeMin: 5 };
  const kitchen = { ...FRAME.kitchen, ovens: [OVEN, second] };
  const two = frameFields({ ...FRAME, kitchen }, TODAY);

  it("that differ stay as they are while the first one's figures stand", () => {
    expect(readFrame({ ...two, cooks: "2" }, TODAY, DISHES, kitchen)).toMatchObject({ body: { kitchen: { ovens: [OVEN, second] } } });
    expect(readFrame({ ...two, ovens: "3" }, TODAY, DISHES, kitchen)).toMatchObject({ body: { kitchen: { ovens: [OVEN, second, OVEN] } } });
  });

  it("become alike when their figures are changed", () => {
    expect(readFrame({ ...two, trays: "3" }, TODAY, DISHES, kitchen)).toMatchObject({ body: { kitchen: { ovens: [{ trays: 3 }, { trays: 3, preheatMin: 15 }] } } });
  });
});

it("a path of the service's answer leads to its control", () => {
  const at = (path: string): string => fieldAt(path.split("."));
  expect(["endsBy", "kitchen.ovens.0.trays", "kitchen.burners", "unavailable.1.toMin", "unavailable.0.fromMin", "dishes.2.recipeId", "anything"].map(at)).toEqual(["endsBy", "trays", "burners", "away-1-to", "away-0-from", "add-dish", "on"]);
});

describe("a stored day that is sent again", () => {
  const day = { ...FRAME, id: "d", title: "Beans and bread", endsBy: "15:30", dishes: [{ recipeId: "a", title: "Soup", batches: 2 }] };
  it("carries all that was stored, and nothing that the service adds", () => {
    expect(bodyOf(day)).toEqual({ ...FRAME, dishes: [{ recipeId: "a", batches: 2 }] });
    const { id, on, startsAt, cooks, kitchen, dishes } = day;
    expect(Object.keys(bodyOf({ id, on, startsAt, cooks, kitchen, dishes, unavailable: [] })).sort()).toEqual(["cooks", "dishes", "kitchen", "on", "startsAt"]);
  });

  it("takes one dish more, or one batch more of a dish that is there", () => {
    expect(withDish(bodyOf(day), "b").dishes).toEqual([
      { recipeId: "a", batches: 2 },
      { recipeId: "b", batches: 1 },
    ]);
    expect(withDish(bodyOf(day), "a").dishes).toEqual([{ recipeId: "a", batches: 3 }]);
  });
});
