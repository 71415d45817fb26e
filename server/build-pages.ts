/** Builds the pages when they are missing, or were built from other sources than lie here now: after a pull, or an edit. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";

/** What the pages are made of; a dependency that changes shows in the lock file. */
const SOURCES = ["web", "shared", "vite.config.ts", "package-lock.json"];
const LEFT_OUT = new Set(["dist", "node_modules"]);
/** Beside the pages, and not handed out. */
const BUILT_FROM = ".built-from";

export interface PagesBuild {
  /** The project's folder. */
  readonly root: string;
  readonly say: (line: string) => void;
  /** Writes the pages into a folder, which it makes. */
  readonly build: (into: string) => Promise<void>;
}

export async function buildPages({ root, say, build }: PagesBuild): Promise<void> {
  const pages = path.join(root, "web/dist");
  const there = existsSync(path.join(pages, "index.html"));
  if (!existsSync(path.join(root, "web/index.html"))) {
    if (!there) say("There are no pages here, only the interface");
    return;
  }
  const digest = digestOf(root);
  if (there && builtFrom(pages) === digest) return;
  say(there ? "The pages have changed; building them again …" : "Building the pages …");
  const made = path.join(root, `web/.dist-${String(process.pid)}`);
  try {
    await build(made);
    writeFileSync(path.join(made, BUILT_FROM), digest);
    putInPlace(made, pages, digest);
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
}

/** Whole or not at all: two services that start together each build, and neither may hand out half of the other's pages. */
function putInPlace(made: string, pages: string, digest: string): void {
  if (existsSync(pages)) {
    if (builtFrom(pages) === digest) return;
    const old = `${made}-old`;
    renameSync(pages, old);
    rmSync(old, { recursive: true, force: true });
  }
  renameSync(made, pages);
}

function builtFrom(pages: string): string | null {
  const file = path.join(pages, BUILT_FROM);
  return existsSync(file) ? readFileSync(file, "utf8") : null;
}

/** Of names and contents, because a pull gives old and new files the same times. */
function digestOf(root: string): string {
  const hash = createHash("sha256");
  for (const file of SOURCES.flatMap((source) => filesIn(root, source))) {
    const content = readFileSync(path.join(root, file));
    hash.update(`${file}\0${content.byteLength}\0`).update(content);
  }
  return hash.digest("hex");
}

/** Relative to the root, in the order of their names. */
function filesIn(root: string, name: string): string[] {
  const full = path.join(root, name);
  if (!existsSync(full)) return [];
  if (!statSync(full).isDirectory()) return [name];
  const entries = readdirSync(full).filter((entry) => !entry.startsWith(".") && !LEFT_OUT.has(entry));
  return entries.sort().flatMap((entry) => filesIn(root, path.join(name, entry)));
}
