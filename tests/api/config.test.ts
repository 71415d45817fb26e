import { describe, expect, it } from "vitest";
import { readConfig, VARIABLES } from "#server/config.ts";

const faults = (env: Record<string, string>): string[] => {
  const read = readConfig(env);
  return read.ok ? [] : read.faults.map((fault) => fault.split(" ")[0] as string);
};

describe("the settings", () => {
  it("need none", () => {
    expect(readConfig({})).toEqual({ ok: true, config: { port: 8080, host: "127.0.0.1", databaseUrl: null, dataFolder: "./data", mode: "live", today: null } });
  });

  it("are those of the design, and an empty one is none", () => {
    expect([...VARIABLES].sort()).toEqual(["DATABASE_URL", "HOST", "PORT", "STILLROOM_DATA", "STILLROOM_MODE", "STILLROOM_TODAY"]);
    expect(readConfig(Object.fromEntries(VARIABLES.map((name) => [name, ""])))).toEqual(readConfig({}));
  });

  it.each(["localhost", "127.0.0.1", "127.0.1.1", "::1"])("listen on %s", (host) => {
    expect(faults({ HOST: host })).toEqual([]);
  });

  it.each(["0.0.0.0", "::", "192.168.1.4", "stillroom.example", "127.0.0.1.evil.example"])("do not listen on %s, where others could come in without signing in", (host) => {
    expect(faults({ HOST: host })).toEqual(["HOST"]);
  });

  it("fix the day only in demo and test", () => {
    expect(faults({ STILLROOM_TODAY: "2027-07-26" })).toEqual(["STILLROOM_TODAY"]);
    expect(faults({ STILLROOM_TODAY: "2027-07-26", STILLROOM_MODE: "live" })).toEqual(["STILLROOM_TODAY"]);
    for (const mode of ["demo", "test"]) {
      const read = readConfig({ STILLROOM_TODAY: "2027-07-26", STILLROOM_MODE: mode });
      expect(read).toMatchObject({ ok: true, config: { mode, today: "2027-07-26" } });
    }
  });

  it("say all that is wrong at once", () => {
    const all = { PORT: "70000", HOST: "0.0.0.0", DATABASE_URL: "mysql://x", STILLROOM_MODE: "demo", STILLROOM_TODAY: "2027-04-31" };
    expect(faults(all).sort()).toEqual(["DATABASE_URL", "HOST", "PORT", "STILLROOM_TODAY"]);
    expect(faults({ PORT: "eighty", STILLROOM_MODE: "prod" }).sort()).toEqual(["PORT", "STILLROOM_MODE"]);
  });
});
