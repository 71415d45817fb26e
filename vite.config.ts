import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { defineConfig, type Plugin, type ResolvedConfig } from "vite";

/** Writes each text of the build a second and third time, packed, so that the server has nothing to pack while someone waits. */
function packed(): Plugin {
  let folder = "";
  return {
    name: "packed",
    apply: "build",
    configResolved: (config) => void (folder = folderOf(config)),
    closeBundle() {
      for (const entry of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
        if (!/\.(?:js|css|html|svg)$/.test(entry)) continue;
        const file = path.join(folder, entry);
        const text = readFileSync(file);
        writeFileSync(`${file}.gz`, gzipSync(text, { level: 9 }));
        writeFileSync(`${file}.br`, brotliCompressSync(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }));
      }
    },
  };
}

/** Writes into early.js which files each page is made of, so that they are fetched beside the main ones and not after them. */
function early(): Plugin {
  let folder = "";
  const files: Record<string, string[]> = {};
  return {
    name: "early",
    apply: "build",
    configResolved: (config) => void (folder = folderOf(config)),
    generateBundle(_, bundle) {
      const withImports = (name: string, seen: Set<string>): Set<string> => {
        const chunk = bundle[name];
        if (chunk?.type !== "chunk" || chunk.isEntry || seen.has(name)) return seen;
        seen.add(name);
        for (const next of chunk.imports) withImports(next, seen);
        for (const css of chunk.viteMetadata?.importedCss ?? []) seen.add(css);
        return seen;
      };
      for (const chunk of Object.values(bundle)) {
        const page = chunk.type === "chunk" ? /pages\/([^/]+)\/page\.tsx$/.exec(chunk.facadeModuleId ?? "")?.[1] : undefined;
        if (page !== undefined) files[page] = [...withImports(chunk.fileName, new Set())];
      }
    },
    closeBundle() {
      const file = path.join(folder, "early.js");
      const text = readFileSync(file, "utf8");
      if (!text.includes("FILES = {};")) throw new Error("early.js has no place for the files of the pages");
      writeFileSync(file, text.replace("FILES = {};", `FILES = ${JSON.stringify(files)};`));
    },
  };
}

const folderOf = ({ root, build }: ResolvedConfig): string => path.resolve(root, build.outDir);

/** The pages are built into web/dist; the server hands them out. No inline script or style may come out of this. */
export default defineConfig({
  root: "web",
  base: "/",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [early(), packed()],
  build: {
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
