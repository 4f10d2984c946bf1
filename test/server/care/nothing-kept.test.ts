import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { thoroughly } from "../../effort.ts";
import { open } from "../loopback.ts";
import { LONG_SET, PLAN } from "../plan.ts";
import { type Service, startService } from "../process.ts";
import { withFile } from "../service.ts";
import { pcm } from "../wav-bytes.ts";

const scratch: string[] = [];
afterEach(() => {
  for (const directory of scratch.splice(0)) rmSync(directory, { recursive: true, force: true });
});

/** Directories that nobody but the service under test uses. */
function ownDirectories() {
  const root = mkdtempSync(join(tmpdir(), "presolder-kept-"));
  scratch.push(root);
  const [cwd, temp, home] = ["cwd", "temp", "home"].map((name) => join(root, name)) as [string, string, string];
  for (const directory of [cwd, temp, home]) mkdirSync(directory);
  return {
    root,
    cwd,
    environment: { TMPDIR: temp, HOME: home, XDG_CACHE_HOME: join(home, "cache"), LOG_LEVEL: "trace" },
  };
}

const filesUnder = (directory: string) =>
  readdirSync(directory, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

interface Marks {
  readonly word: string;
  readonly recording: Buffer;
}

function newMarks(): Marks {
  const recording = pcm({ frames: 4_000 });
  randomBytes(64).copy(recording, 4_000);
  return { word: `mark${randomBytes(8).toString("hex")}`, recording };
}

/** Everything a person might do, with the marks wherever a person's own words and sounds go. Answers the link's code. */
async function session(service: Service, { word, recording }: Marks): Promise<string> {
  const build = { ...PLAN, title: word };
  const marked = { "user-agent": word, referer: `http://${word}/` };
  const post = (path: string, body: object) =>
    fetch(service.url + path, {
      method: "POST",
      headers: { "content-type": "application/json", ...marked },
      body: JSON.stringify(body),
    });
  const upload = (path: string, request: object) => {
    const { headers, payload } = withFile(request, recording, `${word}.wav`);
    return fetch(service.url + path, { method: "POST", headers: { ...headers, ...marked }, body: payload });
  };
  const { code } = (await (await post("/api/link", { build, view: { [word]: word } })).json()) as { code: string };
  const statuses = [
    await fetch(`${service.url}/b/${code}`),
    await fetch(`${service.url}/api/link/${code}`),
    await fetch(`${service.url}/api/preview.wav?build=${code}&lever=2&signal=click`),
    await fetch(`${service.url}/api/impulse.wav?build=${code}`),
    await post("/api/response", { build }),
    await post("/api/bench", { build }),
    await post("/api/compare", { builds: [build, build], settings: {} }),
    await upload("/api/preview", { build }),
    await upload("/api/previews", { build, sweep: { tone: [0, 10] } }),
    await post("/api/expand", { build: { ...build, [word]: 1 } }),
    await post("/api/response", { build, settings: { [word]: 1 } }),
    await fetch(`${service.url}/${word}?${word}`),
    await fetch(`${service.url}/api/scenarios/${word}`),
  ].map(({ status }) => status);
  expect(statuses).toEqual([200, 200, 200, 200, 200, 200, 200, 200, 200, 400, 400, 404, 404]);
  const left = open({ port: service.port, path: "/api/previews", body: { ...LONG_SET, build } });
  await new Promise((done) => setTimeout(done, 300));
  left.request.destroy();
  return code;
}

/** Regular files that the process has open. */
function openFiles(pid: number): string[] {
  return readdirSync(`/proc/${pid}/fd`).flatMap((fd) => {
    try {
      const path = readlinkSync(`/proc/${pid}/fd/${fd}`);
      return path.startsWith("/") && !/^\/(dev|proc)\//.test(path) && statSync(path).isFile() ? [path] : [];
    } catch {
      return [];
    }
  });
}

async function endedLog(service: Service): Promise<string> {
  service.child.kill("SIGTERM");
  expect(await service.ended).toBe(0);
  return service.log();
}

function expectNoMarks(text: string, { word, recording }: Marks, code: string): void {
  const sample = recording.subarray(4_000, 4_064);
  const traces = [word, code.slice(0, 24), sample.toString("base64").slice(2, 40), sample.toString("hex")];
  const lines = text.split("\n").filter((line) => traces.some((trace) => line.includes(trace)));
  expect(lines).toEqual([]);
}

describe("after a session with builds and recordings of one's own", () => {
  test("no file holds anything of it, none was written, and the log has not a word of it", async () => {
    const { root, cwd, environment } = ownDirectories();
    const before = new Date();
    const service = await startService({ cwd, environment, main: resolve("dist/main.js") });
    const marks = newMarks();
    const code = await session(service, marks);
    const files = openFiles(service.child.pid!);
    const log = await endedLog(service);
    expect(log).toContain('"route":"/api/preview.wav"');
    expectNoMarks(log, marks, code);
    expect(filesUnder(root)).toEqual([]);
    for (const file of files) expectNoMarks(readFileSync(file, "latin1"), marks, code);
    for (const directory of ["public", "scenarios", "dist"]) {
      const changed = filesUnder(directory).filter((file) => statSync(file).mtime > before);
      for (const file of changed) expectNoMarks(readFileSync(file, "latin1"), marks, code);
    }
  });

  thoroughly("nothing was missing where the file system cannot be written to at all", async () => {
    const { cwd, environment } = ownDirectories();
    // Node's own permission model: every attempt to write, wherever, would fail as it does on a full or read-only disk.
    // Its option has lost a word since Node 20; from Node 25 on it asks for leave to use the network, too.
    const known = ["--permission", "--allow-net"].filter((name) => process.allowedNodeEnvironmentFlags.has(name));
    const [permission = "--experimental-permission", ...net] = known;
    const nodeArguments = [permission, ...net, "--allow-fs-read=*", "--allow-worker"];
    const writing = ["-e", `require("node:fs").writeFileSync(${JSON.stringify(join(cwd, "file"))}, "")`];
    expect(spawnSync(process.execPath, [...nodeArguments, ...writing], { encoding: "utf8" }).stderr).toContain(
      "ERR_ACCESS_DENIED",
    );
    const service = await startService({ cwd, environment, nodeArguments, main: resolve("dist/main.js") });
    const marks = newMarks();
    const code = await session(service, marks);
    const log = await endedLog(service);
    expect(log).not.toContain("ERR_ACCESS_DENIED");
    expectNoMarks(log, marks, code);
  });
});
