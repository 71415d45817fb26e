import { defineConfig } from "eslint/config";
import tseslint from "typescript-eslint";

/** Type-aware rules that find real faults in a server; layout is nobody's quarrel here. */
export default defineConfig(
  { ignores: ["node_modules", "web/dist", "web/public", "**/*.mjs", "data", "coverage"] },
  tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/require-await": "off",
    },
  },
);
