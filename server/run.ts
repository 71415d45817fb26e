/** What the two commands share: say what is wrong with the settings, and stop when asked to. */
import type { Config, ConfigRead } from "./config.ts";
import { serve, type Setting } from "./serve.ts";

/** After this long a stop is no longer waited for. */
const LONGEST_STOP_MS = 15_000;

export function settingsOrExit(read: ConfigRead): Config {
  if (read.ok) return read.config;
  console.error("Stillroom cannot start with these settings:");
  for (const fault of read.faults) console.error(`  ${fault}`);
  process.exit(2);
}

/** Serves until a signal comes; a second signal stops at once. */
export async function run(setting: Setting): Promise<void> {
  try {
    const service = await serve(setting);
    setting.say(`Stillroom is at ${service.url} (Ctrl+C stops it)`);
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => void stop(service.stop, setting.say));
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}

async function stop(stopService: () => Promise<void>, say: (line: string) => void): Promise<void> {
  say("Stopping: finishing what is under way …");
  const patience = setTimeout(() => {
    console.error("Something did not finish in time; stopped all the same.");
    process.exit(1);
  }, LONGEST_STOP_MS);
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => process.exit(1));
  await stopService();
  clearTimeout(patience);
  say("Stopped");
}
