/** The stream of changes: read from a listening service as a browser reads it (WHATWG HTML, section 9.2.6, "Interpreting an event stream"). */
import { randomUUID } from "node:crypto";
import { get, type IncomingMessage } from "node:http";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildApp } from "#server/app.ts";
import type { Changed } from "#shared/contracts/events.ts";
import { putNew, TODAY, testApp, type TestApp } from "#tests/support/build-app.ts";
import { fixedClock } from "#server/clock.ts";

let stillroom: TestApp;
let other: TestApp;
let address: string;
let otherAddress: string;
beforeAll(async () => {
  stillroom = await testApp();
  other = await stillroom.as();
  address = await stillroom.app.listen({ port: 0, host: "127.0.0.1" });
  otherAddress = await other.app.listen({ port: 0, host: "127.0.0.1" });
});
afterAll(() => stillroom.close());

interface Heard {
  readonly event: string;
  readonly id: string;
  readonly data: string;
}

interface Ear {
  readonly headers: IncomingMessage["headers"];
  /** The next event that carries something. */
  next(): Promise<Heard>;
  /** What is known of the stand so far, as a browser would send it. */
  lastId(): string;
  /** Resolves when the other side has ended. */
  ended(): Promise<true>;
  leave(): void;
}

async function listen(base: string, query = "", headers: Record<string, string> = {}): Promise<Ear> {
  // a connection of its own, so that leaving leaves nothing open
  const request = get(`${base}/api/events${query}`, { agent: false, headers: { accept: "text/event-stream", "accept-encoding": "br, gzip", ...headers } });
  const answer = await new Promise<IncomingMessage>((resolve, reject) => request.once("response", resolve).once("error", reject));
  const chunks = answer.setEncoding("utf8")[Symbol.asyncIterator]() as AsyncIterator<string>;
  let [text, id] = ["", ""];
  const block = async (): Promise<string | null> => {
    for (;;) {
      const at = text.indexOf("\n\n");
      if (at >= 0) {
        const found = text.slice(0, at);
        text = text.slice(at + 2);
        return found;
      }
      const read: IteratorResult<string, unknown> = await chunks.next();
      if (read.done === true) return null;
      text += read.value;
    }
  };
  const next = async (): Promise<Heard | null> => {
    for (;;) {
      const lines = await block();
      if (lines === null) return null;
      const of = (name: string): string => lines.split("\n").find((line) => line.startsWith(`${name}: `))?.slice(name.length + 2) ?? "";
      id = of("id") || id;
      if (of("data") !== "") return { event: of("event"), id, data: of("data") };
    }
  };
  return {
    headers: answer.headers,
    next: async () => (await next()) as Heard,
    lastId: () => id,
    ended: async () => ((await next()) === null ? true : Promise.reject(new Error("something was said"))),
    leave: () => void request.destroy(),
  };
}

const partsOf = ({ data }: Heard): readonly string[] => (JSON.parse(data) as Changed).parts;
const bed = { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" };

describe("the stream of changes", () => {
  it("reaches two listeners of a household, unpacked and at once, and none of another", async () => {
    const [one, two, stranger] = [await listen(address), await listen(address), await listen(otherAddress)];
    expect(one.headers["content-type"]).toContain("text/event-stream");
    expect(one.headers["content-encoding"]).toBeUndefined();
    expect(one.headers["cache-control"]).toContain("no-transform");
    await putNew(stillroom, "beds", bed);
    const heard = await Promise.all([one.next(), two.next()]);
    expect(heard.map(({ event }) => event)).toEqual(["changed", "changed"]);
    expect(heard.map(partsOf)).toEqual([["garden"], ["garden"]]);
    // the stranger hears of its own write only
    await putNew(other, "places", { name: "Shelf", kind: "shelf" });
    expect(partsOf(await stranger.next())).toEqual(["larder"]);
    for (const ear of [one, two, stranger]) ear.leave();
  });

  it("tells what was missed to whoever names where it stood", async () => {
    const first = await listen(address);
    await putNew(stillroom, "beds", bed);
    await first.next();
    const stood = first.lastId();
    first.leave();
    await putNew(stillroom, "places", { name: "Cellar", kind: "cellar" });
    const [again, fromAnswer] = [await listen(address, "", { "last-event-id": stood }), await listen(address, `?since=${encodeURIComponent(stood)}`)];
    expect(partsOf(await again.next())).toEqual(["larder"]);
    expect(partsOf(await fromAnswer.next())).toEqual(["larder"]);
    for (const ear of [again, fromAnswer]) ear.leave();
    const confused = await listen(address, "?since=nothing-known");
    expect(partsOf(await confused.next())).toContain("garden");
    confused.leave();
  });

  it("hears what another program on the same database writes", async () => {
    const ear = await listen(address);
    const elsewhere = await buildApp({ db: stillroom.test.db, clock: fixedClock(TODAY), mode: "test", version: "0.0.0", log: "none", pages: null, memberOf: () => ({ householdId: stillroom.householdId }) });
    const put = await elsewhere.inject({ method: "PUT", url: `/api/beds/${randomUUID()}`, payload: bed, headers: { host: "localhost" } });
    expect(put.statusCode).toBe(201);
    expect(partsOf(await ear.next())).toEqual(["garden"]);
    ear.leave();
    await elsewhere.close();
  });

  it("ends when the service stops, which does not wait for it", async () => {
    const third = await stillroom.as();
    const base = await third.app.listen({ port: 0, host: "127.0.0.1" });
    const ear = await listen(base);
    const closed = third.app.close();
    expect(await ear.ended()).toBe(true);
    await closed;
  });
});
