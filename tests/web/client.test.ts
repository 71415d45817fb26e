/** Calls to the service: sent again with the same id when the connection breaks, versions carried, errors in words. The network is the only thing replaced. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import * as calls from "#web/api/calls.ts";
import { contracts } from "#web/api/client.ts";
import { newId, uuidOf } from "#web/api/new-id.ts";
import { ApiProblem } from "#web/api/problem.ts";
import { sendState } from "#web/api/send-state.ts";

type Sent = { path: string; method: string; body: string | null; ifMatch: string | null };
const BED = { id: "00000000-0000-4000-8000-000000000101", name: "Wall bed", lengthM: 4, widthM: 1.2, cover: "open", areaM2: 4.8, freeM2: 4.8 };
const NEW_BED = { name: "Wall bed", lengthM: 4, widthM: 1.2, cover: "open" } as const;

/** Answers in turn; an Error stands for a broken connection. */
function network(...answers: (Response | Error)[]): Sent[] {
  const sent: Sent[] = [];
  vi.stubGlobal("fetch", async (path: string, request: RequestInit) => {
    const headers = new Headers(request.headers);
    sent.push({ path, method: request.method ?? "GET", body: typeof request.body === "string" ? request.body : null, ifMatch: headers.get("if-match") });
    const answer = answers.shift();
    if (answer === undefined) throw new Error("one call more than expected");
    if (answer instanceof Error) throw answer;
    return answer;
  });
  return sent;
}

const json = (status: number, body: unknown, headers: Record<string, string> = {}): Response => new Response(JSON.stringify(body), { status, headers: { "content-type": "application/json", ...headers } });
const broken = (): Error => new TypeError("failed to fetch");

async function refused(call: Promise<unknown>): Promise<ApiProblem> {
  const thrown: unknown = await call.then(
    () => null,
    (reason: unknown) => reason,
  );
  if (!(thrown instanceof ApiProblem)) throw new Error("the call was not refused");
  return thrown;
}

afterEach(() => vi.unstubAllGlobals());

describe("a new thing", () => {
  it("is sent once more, with the same id and body, when the connection breaks", async () => {
    const id = newId();
    const sent = network(broken(), json(201, { ...BED, id }));
    const bed = await calls.putBed(id, NEW_BED);
    expect(bed.id).toBe(id);
    expect(sent).toHaveLength(2);
    expect(sent[1]).toEqual(sent[0]);
    expect(sent[0]).toMatchObject({ path: `/api/beds/${id}`, method: "PUT", body: JSON.stringify(NEW_BED), ifMatch: null });
    expect(sendState.value.kind).toBe("saved");
  });

  it("reads as not sent when no answer comes at all", async () => {
    network(broken(), broken());
    const problem = await refused(calls.putBed(newId(), NEW_BED));
    expect(problem.noAnswer).toBe(true);
    expect(sendState.value.kind).toBe("not-sent");
  });
});

describe("a change", () => {
  it("carries the version that was read, and the next one the version that was answered", async () => {
    const sent = network(json(200, BED, { etag: '"1-a"' }), json(200, BED, { etag: '"2-a"' }), json(200, BED, { etag: '"3-a"' }));
    await calls.bed(BED.id);
    await calls.putBed(BED.id, NEW_BED);
    await calls.putBed(BED.id, NEW_BED);
    expect(sent.map(({ ifMatch }) => ifMatch)).toEqual([null, '"1-a"', '"2-a"']);
  });

  it("of something that somebody else changed meanwhile is told apart from other refusals", async () => {
    network(json(412, { type: "/problems/precondition-failed", title: "Changed meanwhile", status: 412, detail: "It was changed meanwhile." }));
    expect((await refused(calls.putBed(BED.id, NEW_BED))).stale).toBe(true);
  });
});

describe("an error", () => {
  it("keeps the words of the problem document and its fields (RFC 9457)", async () => {
    const fields = [{ path: "lengthM", message: "must be more than nothing" }];
    network(json(400, { type: "/problems/bad-request", title: "Bad", status: 400, detail: "The bed does not fit.", fields }));
    const problem = await refused(calls.putBed(newId(), NEW_BED));
    expect([problem.status, problem.message, problem.fields]).toEqual([400, "The bed does not fit.", fields]);
    expect(sendState.value.kind).toBe("refused");
  });

  it("without a document still has words, and is not sent again", async () => {
    const sent = network(new Response("<h1>Bad gateway</h1>", { status: 502 }));
    expect((await refused(calls.beds())).message).toContain("502");
    expect(sent).toHaveLength(1);
  });

  it("of the first page, drawn before the contracts have come, is told of when they have", async () => {
    vi.resetModules();
    vi.useFakeTimers();
    const [freshCalls, client] = await Promise.all([import("#web/api/calls.ts"), import("#web/api/client.ts")]);
    network(json(200, [{ ...BED, freeM2: "much" }]));
    expect(await freshCalls.beds()).toHaveLength(1);
    expect(client.misfit.value).toBeNull();
    await vi.runAllTimersAsync();
    vi.useRealTimers();
    await vi.waitFor(() => expect(client.misfit.value).toContain("0.freeM2"));
  });

  it("names the place where an answer does not fit the contract", async () => {
    await contracts();
    network(json(200, [{ ...BED, freeM2: "much" }]));
    expect((await refused(calls.beds())).message).toContain("0.freeM2");
  });

  it("the code that every page begins with brings no contract and no parser with it", () => {
    const seen = new Set<string>();
    const follow = (file: string): void => {
      if (seen.has(file)) return;
      seen.add(file);
      const text = readFileSync(file, "utf8");
      for (const [, from] of text.matchAll(/^(?:import|export) (?!type )[^;]*?from "([^"]+)"/gms)) {
        expect(from, file).not.toMatch(/shared\/contracts|^zod/);
        if (from?.startsWith("#")) follow(path.resolve(from.slice(1)));
        else if (from?.startsWith(".")) follow(path.resolve(path.dirname(file), from));
      }
    };
    follow(path.resolve("web/main.tsx"));
    follow(path.resolve("web/pages/calendar/page.tsx"));
    follow(path.resolve("web/pages/today/page.tsx"));
    expect(seen.size).toBeGreaterThan(30);
  });
});

describe("an id", () => {
  it("is a version 4 UUID: the example of RFC 9562, appendix A.3, comes out whole, with its fixed bits set whatever was drawn", () => {
    const example = "919108f7-52d1-4320-9bac-f847db4148a8";
    const octets = Uint8Array.from(example.replaceAll("-", "").match(/../g) ?? [], (pair) => parseInt(pair, 16));
    expect(uuidOf(octets)).toBe(example);
    const bare = Uint8Array.from(octets, (octet, i) => (i === 6 ? octet & 0x0f : i === 8 ? octet & 0x3f : octet));
    expect(uuidOf(bare)).toBe(example);
  });

  it("can be made where randomUUID is missing, as over plain HTTP", () => {
    vi.stubGlobal("crypto", { getRandomValues: (octets: Uint8Array) => octets.fill(0xff) });
    expect(newId()).toBe("ffffffff-ffff-4fff-bfff-ffffffffffff");
  });
});
