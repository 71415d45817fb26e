/**
 * A process that asks addresses over and over on so many connections and prints what it saw as JSON. Several addresses take turns, a short while
 * each, so that what else the machine does falls on all of them alike.
 */
import http from "node:http";

export interface Load {
  readonly requests: number;
  readonly errors: number;
  readonly seconds: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
}

export interface LoadAsked {
  readonly urls: readonly string[];
  readonly connections: number;
  /** For each address. */
  readonly seconds: number;
}

const TURN_S = 0.25;
/** Each address is asked so often before anything counts. */
const WARM_UP = 20;

interface Seen {
  readonly took: number[];
  errors: number;
  seconds: number;
}

async function main({ urls, connections, seconds }: LoadAsked): Promise<Load[]> {
  const agent = new http.Agent({ keepAlive: true, maxSockets: connections });
  for (const url of urls) for (let i = 0; i < WARM_UP; i++) await ask(url, agent);
  const seen = urls.map((): Seen => ({ took: [], errors: 0, seconds: 0 }));
  for (let turn = 0; turn < Math.max(1, Math.round(seconds / TURN_S)); turn++) for (const [i, url] of urls.entries()) await takeTurn(url, seen[i] as Seen, agent, connections);
  agent.destroy();
  return seen.map(figuresOf);
}

async function takeTurn(url: string, seen: Seen, agent: http.Agent, connections: number): Promise<void> {
  const begun = performance.now();
  const worker = async (): Promise<void> => {
    while (performance.now() < begun + TURN_S * 1000) {
      const asked = performance.now();
      const status = await ask(url, agent);
      seen.took.push(performance.now() - asked);
      if (status !== 200) seen.errors++;
    }
  };
  await Promise.all(Array.from({ length: connections }, worker));
  seen.seconds += (performance.now() - begun) / 1000;
}

function figuresOf({ took, errors, seconds }: Seen): Load {
  took.sort((a, b) => a - b);
  const at = (share: number): number => Math.round((took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? 0) * 100) / 100;
  return { requests: took.length, errors, seconds, p50Ms: at(0.5), p95Ms: at(0.95), p99Ms: at(0.99) };
}

function ask(url: string, agent: http.Agent): Promise<number> {
  return new Promise((resolve) => {
    const request = http.get(url, { agent }, (answer) => {
      answer.resume();
      answer.on("end", () => resolve(answer.statusCode ?? 0));
    });
    request.on("error", () => resolve(0));
  });
}

console.log(JSON.stringify(await main(JSON.parse(process.argv[2] ?? "") as LoadAsked)));
