import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { untidy } from "./support/tidy.ts";

const root = new URL("..", import.meta.url).pathname;
const tracked = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], { cwd: root, encoding: "utf8" }).split("\n").filter(Boolean);
const TOP = new Set(["README.md", "DEVELOPERS.md", "package.json", "package-lock.json", "tsconfig.json", "server", "web", "db", "tests", "seed-data", "shared"]);
const TOOL_CONFIG = /^(?:vite|vitest|eslint)\.config\.[a-z]+$/;

describe("the house", () => {
  it("has the top level that the design names, and nothing else", () => {
    const top = [...new Set(tracked.map((file) => file.split("/")[0] as string))];
    expect(top.filter((name) => !TOP.has(name) && !name.startsWith(".") && !TOOL_CONFIG.test(name))).toEqual([]);
  });

  it("keeps its import rules, has no hidden clock in the core and no unfinished marks", () => {
    const sources = tracked.filter((file) => /^(?:shared|server|db|web|tests)\/.*\.tsx?$/.test(file) && !file.startsWith("tests/support/tidy") && file !== "tests/tidy.test.ts");
    expect(sources.length).toBeGreaterThan(60);
    expect(sources.flatMap((file) => untidy(file, readFileSync(root + file, "utf8")))).toEqual([]);
  });
});

describe("the rules themselves", () => {
  const refused: [file: string, text: string, why: RegExp][] = [
    ["shared/kernel/a.ts", 'import { x } from "../engines/glut/index.ts";', /must not import shared\/engines/],
    ["shared/kernel/a.ts", 'import fs from "node:fs";', /must not import node:fs/],
    ["shared/engines/glut/index.ts", 'import { y } from "../pairing/index.ts";', /must not import shared\/engines\/pairing/],
    ["shared/engines/glut/index.ts", 'const y = await import("#shared/contracts/beds.ts");', /must not import shared\/contracts/],
    ["shared/planning/a.ts", 'import { z } from "../engines/glut/cohorts.ts";', /must not import/],
    ["shared/planning/a.ts", "const today = new Date();", /clock or dice/],
    ["shared/engines/glut/index.ts", "const roll = Math.random();", /clock or dice/],
    ["shared/kernel/a.ts", "const now = DateTime.now();", /clock or dice/],
    ["server/beds/routes.ts", 'import { s } from "../sowings/store.ts";', /must not import server\/sowings/],
    ["server/beds/routes.ts", "await tx.select().from(beds)", /SQL outside a store/],
    ["web/pages/beds/page.tsx", 'import { c } from "../calendar/view.tsx";', /must not import web\/pages\/calendar/],
    ["web/pages/beds/page.tsx", 'import { o } from "#shared/planning/garden-outlook.ts";', /must not import shared\/planning/],
    ["web/pages/beds/view.tsx", '<p style="color: red">', /content policy/],
    ["db/client.ts", 'import { b } from "#server/app.ts";', /must not import server/],
    ["attic/a.ts", "", /no rule covers/],
    ["server/beds/utils.ts", "", /says nothing/],
    ["shared/kernel/a.ts", `// ${"TO"}DO later`, /unfinished/],
    ["shared/kernel/a.ts", "\n".repeat(301), /lines/],
  ];
  it.each(refused)("refuse %s: %s", (file, text, why) => {
    expect(untidy(file, text).join("\n")).toMatch(why);
  });

  const allowed: [file: string, text: string][] = [
    ["shared/kernel/local-date.ts", 'import { DateTime } from "luxon"; const d = new Date(0);'],
    ["shared/engines/glut/index.ts", 'import type { Band } from "../../kernel/band.ts"; import { c } from "./cohorts.ts";'],
    ["shared/planning/garden-outlook.ts", 'import { findGluts } from "../engines/glut/index.ts";'],
    ["server/beds/store.ts", 'import { eq } from "drizzle-orm"; await tx.select().from(beds)'],
    ["web/pages/beds/view.tsx", 'import { useState } from "preact/hooks"; import { scaleTime } from "d3-scale"; import { DateDots } from "../../parts/date-dots.tsx";'],
    ["db/seed.ts", 'import { readFile } from "node:fs/promises"; import { parse } from "csv-parse/sync";'],
  ];
  it.each(allowed)("let pass %s: %s", (file, text) => {
    expect(untidy(file, text)).toEqual([]);
  });
});
