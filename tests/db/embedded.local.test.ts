import { execFileSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { closedFolder, serverAccount } from "#db/local/account.ts";
import { usableBinaries } from "#db/local/binaries.ts";
import { openCluster } from "#db/local/cluster.ts";
import { freePort, runServer } from "#db/local/run-server.ts";
import { plainWords } from "#db/local/words.ts";
import { startLocal, startThrowAway, type LocalServer } from "#db/local.ts";
import { killAll, startProcess, untilGone } from "../support/database-process.ts";
import { asSuperuser } from "../support/test-db.ts";

const folders: string[] = [];
function dataFolder(mode = 0o755): string {
  const folder = mkdtempSync(path.join(tmpdir(), "stillroom-local-"));
  chmodSync(folder, mode);
  folders.push(folder);
  return folder;
}
afterEach(killAll);
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

const show = (url: string, setting: string) => asSuperuser(url, async (client) => (await client.query<Record<string, string>>(`show ${setting}`)).rows[0]?.[setting]);

describe("the built-in database", () => {
  let dataDir: string;
  let server: LocalServer;
  const said: string[] = [];
  beforeAll(async () => {
    dataDir = path.join(dataFolder(), "made", "when", "missing");
    server = await startLocal({ dataDir, durable: true, say: (line) => said.push(line) });
  });
  afterAll(() => server.stop());

  it("says what it is doing the first time", () => {
    expect(said).toEqual([`Making a new database in ${dataDir}`]);
  });

  it("forces what is confirmed to the disk, and checks what it reads", async () => {
    for (const setting of ["fsync", "synchronous_commit", "full_page_writes", "data_checksums"]) expect([setting, await show(server.url, setting)]).toEqual([setting, "on"]);
  });

  it("listens on the loopback address alone, with a password that only its owner can read", async () => {
    expect(await show(server.url, "listen_addresses")).toBe("127.0.0.1");
    expect(await show(server.url, "unix_socket_directories")).toBe("");
    expect(await show(server.url, "password_encryption")).toBe("scram-sha-256");
    const password = path.join(dataDir, "server/password");
    expect(statSync(password).mode & 0o777).toBe(0o600);
    expect(statSync(path.join(dataDir, "server/cluster")).mode & 0o777).toBe(0o700);
    expect(readFileSync(password, "utf8")).toMatch(/^[0-9a-f]{64}$/);
    const wrong = new URL(server.url);
    wrong.password = "guess";
    await expect(asSuperuser(wrong.href, (client) => client.query("select"))).rejects.toThrow(/password authentication failed/);
  });

  it("writes no statement and no value of the household into its log", async () => {
    await asSuperuser(server.url, async (client) => {
      await client.query("create table notes (words text primary key)");
      await client.query("insert into notes values ('under the plum tree')");
      await expect(client.query("insert into notes values ('under the plum tree')")).rejects.toThrow(/duplicate key/);
    });
    const log = readFileSync(path.join(dataDir, "server/postgres.log"), "utf8");
    expect(log).toMatch(/duplicate key/);
    expect(log).not.toMatch(/plum/);
  });

  it("keeps letters of every language, and folds their case", async () => {
    const { rows } = await asSuperuser(server.url, (client) => client.query("select lower('ÉPINARD ŘEPA') as low, upper('großer kürbis') as up"));
    expect(rows).toEqual([{ low: "épinard řepa", up: "GROßER KÜRBIS" }]);
  });

  it("refuses a second process on the same folder in plain words, and goes on for the first", async () => {
    const second = await startProcess([dataDir, "holder"]);
    expect(second.said.refused).toBe(`The data folder ${dataDir} is already in use by another Stillroom (process ${process.pid}). Use that one, or stop it first, or set STILLROOM_DATA to another folder.`);
    await expect(startLocal({ dataDir, durable: true })).rejects.toThrow(/already in use by another Stillroom/);
    const { rows } = await asSuperuser(server.url, (client) => client.query("select 1 as still"));
    expect(rows).toEqual([{ still: 1 }]);
  });

  it("has its data again after it was stopped, with nothing to say", async () => {
    await server.stop();
    said.length = 0;
    server = await startLocal({ dataDir, durable: true, say: (line) => said.push(line) });
    expect((await asSuperuser(server.url, (client) => client.query("select words from notes"))).rows).toEqual([{ words: "under the plum tree" }]);
    expect(said).toEqual([]);
  });

  it("may be stopped twice", async () => {
    const other = await startThrowAway();
    await Promise.all([other.stop(), other.stop()]);
    await other.stop();
  });

  it("is made once when several start on a new folder at the same moment; one has it, the others are refused", async () => {
    const fresh = dataFolder();
    const started = await Promise.all(Array.from({ length: 3 }, () => startProcess([fresh, "holder"])));
    const refused = started.flatMap(({ said: { refused: words } }) => (words === undefined ? [] : [words]));
    expect(refused).toHaveLength(2);
    for (const words of refused) expect(words).toMatch(/in use by another Stillroom|started by another process at the same moment/);
  });
});

describe("a folder that was left behind", () => {
  it("by a process and its watchdog, both killed, is taken over: the server that still runs is stopped in good order first", async () => {
    const dataDir = dataFolder();
    const first = await startProcess([dataDir, "holder"]);
    const pid = first.said.pid as number;
    const watchdog = Number(execFileSync("ps", ["-o", "ppid=", "-p", String(pid)], { encoding: "utf8" }));
    process.kill(watchdog, "SIGKILL");
    await first.kill();
    expect(() => process.kill(pid, 0)).not.toThrow();
    const said: string[] = [];
    const server = await startLocal({ dataDir, durable: false, say: (line) => said.push(line) });
    await untilGone(pid);
    expect(said).toEqual(["The folder's database is still running; waiting for it to end"]);
    expect(await show(server.url, "data_directory")).toBe(path.join(dataDir, "server/cluster"));
    await server.stop();
  });

  it("half made is made anew", async () => {
    const dataDir = dataFolder();
    // no process has this number: it is beyond what Linux gives out
    const halfMade = path.join(dataDir, "server.tmp-4194305");
    mkdirSync(halfMade);
    writeFileSync(path.join(halfMade, "password"), "x");
    const server = await startLocal({ dataDir, durable: false });
    await server.stop();
    expect(() => statSync(halfMade)).toThrow(/ENOENT/);
  });

  it("with the lock of a dead server is opened", async () => {
    const dataDir = dataFolder();
    const first = await startProcess([dataDir, "holder"]);
    process.kill(first.said.pid as number, "SIGKILL");
    await first.kill();
    const server = await startLocal({ dataDir, durable: false });
    await server.stop();
  });
});

describe("a folder that cannot be opened", () => {
  it("written by another version is refused with both versions named", async () => {
    const dataDir = dataFolder();
    mkdirSync(path.join(dataDir, "server/cluster"), { recursive: true });
    writeFileSync(path.join(dataDir, "server/cluster/PG_VERSION"), "17\n");
    await expect(startLocal({ dataDir, durable: true })).rejects.toThrow(`The data in ${dataDir} was written by PostgreSQL 17, and this Stillroom brings PostgreSQL 18, which cannot open it.`);
  });

  it("without a database in it is named", async () => {
    const dataDir = dataFolder();
    mkdirSync(path.join(dataDir, "server"));
    await expect(startLocal({ dataDir, durable: true })).rejects.toThrow(/is not a Stillroom database .* Set STILLROOM_DATA to another folder/);
  });

  it("below a folder that another account may not enter is named", () => {
    const closed = dataFolder(0o700);
    mkdirSync(path.join(closed, "deeper"));
    expect(closedFolder(path.join(closed, "deeper"), { uid: 65_533, gid: 65_533 })).toBe(closed);
    chmodSync(closed, 0o711);
    expect(closedFolder(path.join(closed, "deeper"), { uid: 65_533, gid: 65_533 })).toBeNull();
    expect(closedFolder(path.join(closed, "deeper"), null)).toBeNull();
  });

  // what root meets can only be seen as root
  if (serverAccount() !== null) {
    it("is refused to root below a closed folder, with the way out", async () => {
      const closed = dataFolder(0o700);
      await expect(startLocal({ dataDir: path.join(closed, "data"), durable: true })).rejects.toThrow(
        `The database cannot run as root, and the account it runs as instead (nobody) may not enter ${closed}. Set STILLROOM_DATA to a folder outside it`,
      );
    });

    it("is refused to an account that is not in the list of users, with the way out", async () => {
      const dataDir = dataFolder(0o777);
      const nameless = await startProcess([path.join(dataDir, "data"), "holder"], { uid: 54_321 });
      expect(nameless.said.refused).toMatch(/has no entry in the list of users .* set DATABASE_URL to a PostgreSQL server/);
    });
  }
});

describe("what PostgreSQL says", () => {
  // the left sides are messages of PostgreSQL 18: src/common/username.c, src/bin/initdb/initdb.c, src/backend/main/main.c, strerror(3)
  it.each([
    ["initdb: error: could not look up effective user ID 12345: user does not exist", /no entry in the list of users/],
    ["initdb: error: cannot be run as root", /does not run as root/],
    ['"root" execution of the PostgreSQL server is not permitted.', /does not run as root/],
    ["Execution of PostgreSQL by a user with administrative permissions is not permitted.", /does not run as an administrator/],
    ['FATAL:  could not write to file "pg_wal/xlogtemp.7": No space left on device', /The disk that holds \/house is full/],
    ['initdb: error: could not create directory "/house/x": Permission denied', /may not write in \/house/],
    ['FATAL:  could not open file "global/pg_control": Read-only file system', /The folder \/house cannot be written/],
    ["LOG:  starting\nFATAL:  something new\nLOG:  shut down", /^The database in \/house did not start\. PostgreSQL says: FATAL: {2}something new$/],
    ["", /PostgreSQL says: nothing$/],
  ])("%s", (message, words) => {
    expect(plainWords(message, "/house")).toMatch(words);
  });
});

describe("a port that somebody took meanwhile", () => {
  it("is given up for another one", async () => {
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(0, "127.0.0.1", resolve));
    const takenPort = (taken.address() as AddressInfo).port;
    const dataDir = dataFolder();
    const account = serverAccount();
    const binaries = usableBinaries(dataDir, account);
    const cluster = openCluster(dataDir, binaries, account, false, () => undefined);
    const offered = [takenPort, takenPort, await freePort()];
    const server = await runServer({ dataDir, cluster, binaries, account, durable: false, remove: false }, () => Promise.resolve(offered.shift() as number));
    if (server === "folder in use") throw new Error("nobody else has this folder");
    expect(offered).toEqual([]);
    expect(server.port).not.toBe(takenPort);
    await server.stop();
    await expect(runServer({ dataDir, cluster, binaries, account, durable: false, remove: false }, () => Promise.resolve(takenPort))).rejects.toThrow(/PostgreSQL says: .*could not create any TCP\/IP sockets/);
    taken.close();
  });
});
