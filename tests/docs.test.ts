import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const root = new URL("..", import.meta.url).pathname;
const scripts = new Set(Object.keys((JSON.parse(readFileSync(`${root}package.json`, "utf8")) as { scripts: Record<string, string> }).scripts));
const TOP = "server|web|db|tests|seed-data|shared|\\.ci";

/** Commands and paths that a document names and the project does not have. */
function unkept(text: string): string[] {
  const commands = [...text.matchAll(/\bnpm (?:run ([a-z:-]+)|(start|test))\b/g)].map((m) => m[1] ?? m[2] ?? "");
  const paths = [...text.matchAll(new RegExp(`\`((?:${TOP})/[\\w./-]*)\``, "g"))].map((m) => m[1] ?? "");
  const pictures = [...text.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map((m) => m[1] ?? "");
  return [
    ...commands.filter((name) => !scripts.has(name)).map((name) => `npm run ${name}`),
    ...[...paths, ...pictures].filter((path) => !existsSync(root + path)),
  ];
}

describe("README.md and DEVELOPERS.md", () => {
  it.each(["README.md", "DEVELOPERS.md"])("%s names only commands and paths that exist", (name) => {
    const text = readFileSync(root + name, "utf8");
    expect(text.match(/npm (?:run |start|test)/g)?.length ?? 0).toBeGreaterThan(2);
    expect(unkept(text)).toEqual([]);
  });

  it("a command or path that is gone would be noticed", () => {
    expect(unkept("run `npm run polish`, then see `server/attic.ts` and ![x](tests/none.png)")).toEqual(["npm run polish", "server/attic.ts", "tests/none.png"]);
    expect(unkept("run `npm test`, see `shared/kernel/band.ts`")).toEqual([]);
  });

  it("DEVELOPERS.md lists every environment name that the configuration reads", () => {
    const read = [...readFileSync(`${root}server/config.ts`, "utf8").matchAll(/\b(PORT|HOST|DATABASE_URL|STILLROOM_[A-Z]+)\b/g)].map((m) => m[1] as string);
    const listed = readFileSync(`${root}DEVELOPERS.md`, "utf8");
    expect(new Set(read).size).toBeGreaterThanOrEqual(6);
    expect([...new Set(read)].filter((name) => !listed.includes(`\`${name}\``))).toEqual([]);
  });
});
