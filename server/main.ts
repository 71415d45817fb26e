/** `npm start`: the household's own book, kept under STILLROOM_DATA or on the server of DATABASE_URL. */
import { configOfProcess } from "./config.ts";
import { run, settingsOrExit } from "./run.ts";

const config = settingsOrExit(configOfProcess());
await run({ config, throwAway: false, log: config.mode === "live" ? "json" : "lines", say: (line) => console.error(line) });
