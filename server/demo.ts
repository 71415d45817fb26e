/** `npm run demo`: an invented household in a database that is thrown away, on one day of its summer. */
import { configOfProcess } from "./config.ts";
import { DEMO_DAY, fillWithDemo } from "./demo-household.ts";
import { run, settingsOrExit } from "./run.ts";

const config = settingsOrExit(configOfProcess({ STILLROOM_MODE: "demo" }));
const today = config.today ?? DEMO_DAY;
const say = (line: string): void => console.log(line);
await run({ config: { ...config, today }, throwAway: true, log: "lines", say, fill: (db) => fillWithDemo(db, today, say) });
