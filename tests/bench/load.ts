/** A process that asks one address over and over on so many connections for so many seconds, and prints what it saw as JSON. */
import http from "node:http";

export interface Load {
  readonly requests: number;
  readonly errors: number;
  readonly seconds: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
}

const [url = "", connections = "4", seconds = "2", household = ""] = process.argv.slice(2);

async function main(): Promise<Load> {
  const agent = new http.Agent({ keepAlive: true, maxSockets: Number(connections) });
  const took: number[] = [];
  let errors = 0;
  const begun = performance.now();
  const until = begun + Number(seconds) * 1000;
  const worker = async (): Promise<void> => {
    while (performance.now() < until) {
      const asked = performance.now();
      const status = await ask(agent);
      took.push(performance.now() - asked);
      if (status !== 200) errors++;
    }
  };
  await Promise.all(Array.from({ length: Number(connections) }, worker));
  agent.destroy();
  const spent = (performance.now() - begun) / 1000;
  took.sort((a, b) => a - b);
  const at = (share: number): number => Math.round((took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? 0) * 100) / 100;
  return { requests: took.length, errors, seconds: spent, p50Ms: at(0.5), p95Ms: at(0.95), p99Ms: at(0.99) };
}

function ask(agent: http.Agent): Promise<number> {
  return new Promise((resolve) => {
    const request = http.get(url, { agent, headers: household ? { "x-bench-household": household } : {} }, (answer) => {
      answer.resume();
      answer.on("end", () => resolve(answer.statusCode ?? 0));
    });
    request.on("error", () => resolve(0));
  });
}

console.log(JSON.stringify(await main()));
