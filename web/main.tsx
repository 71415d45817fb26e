/**
 * Where the pages start.
 *
 * How a page is made:
 * - One folder in web/pages with `page.tsx` (default export, gets `PageProps`: loads and acts), views (pure: data to markup),
 *   geometry and words as pure functions in .ts files of their own, and its own .css, imported by page.tsx.
 * - Data: `useLoad(key, signal => calls.things(signal))` from web/api/load.ts; show `Waiting`, `LoadFailed` or the view; after an
 *   entry `await again()` redraws in place. Calls by name stand in web/api/calls.ts; a failed call throws an `ApiProblem`.
 * - A new thing: `calls.putThing(newId(), body)`. A change: read the one thing first (`calls.thing(id)` keeps its version), then
 *   put; `problem.stale` means that somebody else was faster: show both, ask which to keep.
 * - Order on the page: `Answer` (the one h1, a sentence), one plate, the list, the actions. One solid button (`btn main`).
 *   The sentence at the foot (what the figures rest on) is set with `useFootNote`, the title bar with `useTitle`.
 * - Words of dates and amounts come from web/format.ts, typed dates and amounts are read by web/parts/typed-*.ts.
 * - Links are plain `<a href="/beds">`; `goTo` leaves the page, `setQuery` keeps a choice in the address.
 * - Colours and sizes only from styles/tokens.css. No style attributes, no markup from strings: the content policy forbids both.
 */
import { render } from "preact";
import { followAddresses } from "./router.ts";
import { watchScreen } from "./screen.ts";
import { Shell } from "./shell.tsx";
import { readTheme } from "./theme.ts";
import { keepUnits } from "./kept-units.ts";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/plate.css";
import "./styles/print.css";

// The content policy allows no code made from strings. This is the parser's own place for its settings (zod/v4/core), set before it comes.
(globalThis as { __zod_globalConfig?: object }).__zod_globalConfig = { jitless: true };
readTheme();
keepUnits();
watchScreen();
followAddresses();

const app = document.getElementById("app");
if (app) render(<Shell />, app);
