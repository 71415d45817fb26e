import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { defineConfig, type Plugin } from "vite";

/** Writes each text of the build a second and third time, packed, so that the server has nothing to pack while someone waits. */
function packed(folder: string): Plugin {
  return {
    name: "packed",
    apply: "build",
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

const OUT = new URL("web/dist", import.meta.url).pathname;

/** The pages are built into web/dist; the server hands them out. No inline script or style may come out of this. */
export default defineConfig({
  root: "web",
  base: "/",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [packed(OUT)],
  build: {
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
