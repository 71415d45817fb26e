/** `npm run bench -- <suite> [options]`: human lines to stderr, one JSON object as the last line of stdout. */
const SUITES = ["forecast", "backtest", "cook-day", "measures", "season", "api", "web", "start"] as const;

async function main(): Promise<void> {
  const [suite, ...options] = process.argv.slice(2);
  if (!SUITES.some((name) => name === suite)) {
    console.error(`Say which suite: npm run bench -- <${SUITES.join(" | ")}> [options]`);
    process.exitCode = 2;
    return;
  }
  const { run } = (await import(`./${suite}.ts`)) as { run(args: string[]): Promise<Record<string, unknown>> };
  const figures = await run(options);
  console.log(JSON.stringify(figures));
}

await main();

export {};
