import { request as httpRequest } from "node:http";
import { connect } from "node:net";
import { deflateRawSync } from "node:zlib";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { csvCell } from "../../../src/csv.ts";
import { MAX_BODY_BYTES } from "../../../src/limits.ts";
import { buildApp } from "../../../src/server/app.ts";
import { fileName } from "../../../src/server/archive/preview-archive.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { call, listening, serviceWith } from "../loopback.ts";
import { PLAN } from "../plan.ts";
import { multipart } from "../service.ts";

let app: App;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

const json = { "content-type": "application/json" };
const post = (url: string, payload: string | object) => app.inject({ method: "POST", url, payload, headers: json });
const linkOf = (content: string) => `1${deflateRawSync(content).toString("base64url")}`;

describe("paths", () => {
  const ESCAPES = [
    "/../package.json",
    "/..%2fpackage.json",
    "/%2e%2e/package.json",
    "/%2e%2e%2fpackage.json",
    "/built/../../package.json",
    "/built/..%5c..%5cpackage.json",
    "/....//package.json",
    "//etc/passwd",
    "/%00/index.html",
    "/index.html%00.txt",
    "/.git/config",
    "/api/scenarios/..%2f..%2fpackage",
    "/api/scenarios/%2e%2e%2fpackage.json",
    "/api/scenarios/..%2fscenarios%2fcame-back-wrong",
    "/api/scenarios/__proto__",
    "/api/scenarios/constructor",
    "/b/..%2findex.html",
  ];

  test.each(ESCAPES)("%s leads to nothing outside the page", async (path) => {
    const port = await listening(await serviceWith());
    // Node's client sends the path as it is, where fetch would tidy it up.
    const answer = await new Promise<{ status: number; text: string }>((resolve, reject) => {
      const sent = httpRequest({ host: "127.0.0.1", port, path }, (response) => {
        let text = "";
        response.on("data", (chunk) => {
          text += chunk;
        });
        response.on("end", () => resolve({ status: response.statusCode!, text }));
      });
      sent.on("error", reject).end();
    });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.text).not.toMatch(/"dependencies"|root:|repositoryformatversion/);
  });
});

describe("keys that reach a prototype", () => {
  const BUILDS = [
    '{"presolder": 1, "__proto__": {"title": "x"}}',
    '{"presolder": 1, "parts": {"__proto__": {"kind": "jack"}}, "wires": []}',
    '{"presolder": 1, "parts": {"\\u005f_proto__": {"kind": "jack"}}, "wires": []}',
    '{"presolder": 1, "parts": {"constructor": {"prototype": {"kind": "jack"}}}, "wires": []}',
  ];

  test.each(BUILDS)("are refused in a body: %s", async (build) => {
    const answer = await post("/api/expand", `{"build": ${build}}`);
    expect(answer.statusCode).toBe(400);
    expect(answer.json().errors[0]).toEqual({
      path: "body",
      message: expect.stringMatching(/^expected JSON without .*__proto__/),
    });
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  test.each(BUILDS)("are refused in a link: %s", async (build) => {
    const answer = await app.inject({ url: `/api/link/${linkOf(`{"build": ${build}}`)}` });
    expect([answer.statusCode, answer.json().type]).toEqual([400, "urn:presolder:problem:link-invalid"]);
  });

  test.each(BUILDS)("are refused in a form: %s", async (build) => {
    const form = multipart([
      { name: "request", content: `{"build": ${build}}` },
      { name: "signal", content: "RIFF", filename: "a.wav" },
    ]);
    const answer = await app.inject({ method: "POST", url: "/api/preview", ...form });
    const [fault] = answer.json().errors;
    expect([answer.statusCode, fault.path]).toEqual([400, "request"]);
    expect(fault.message).toMatch(/^expected JSON without .*__proto__/);
  });

  test("are refused in a query, or not seen at all", async () => {
    const { code } = (await post("/api/link", { build: PLAN })).json();
    for (const key of ["__proto__", "constructor", "__proto__[x]", "toString", "hasOwnProperty"]) {
      const answer = await app.inject({
        url: `/api/preview.wav?build=${code}&signal=click&${encodeURIComponent(key)}=1`,
      });
      expect([key, answer.statusCode]).toEqual([key, key === "__proto__" ? 200 : 400]);
    }
  });

  test.each(["constructor", "toString", "valueOf", "hasOwnProperty"])(
    "are no names for parts or controls: %s",
    async (name) => {
      const base = threeSingles() as { parts: object };
      const named = await post("/api/expand", {
        build: { ...base, parts: { ...base.parts, [name]: { kind: "terminal" } } },
      });
      expect([named.statusCode, named.json().errors[0].path]).toEqual([400, `build.parts.${name}`]);
      const moved = await post("/api/response", { build: base, settings: { [name]: 1 } });
      expect([moved.statusCode, moved.json().errors[0].path]).toEqual([400, `settings.${name}`]);
    },
  );
});

describe("JSON of a megabyte", () => {
  const list = (entry: string, count: number) => `[${Array(count).fill(entry).join()}]`;
  const keys = Array.from({ length: 80_000 }, (_, index) => `"k${index}":1`).join();
  const TEXTS = [
    [
      "lists and objects",
      `{"view": ${list(list("{}", 9_000), 30)}}`,
      "view: the request has more than 50000 lists and",
    ],
    ["keys of one object", `{"settings": {${keys}}}`, "settings: has more than 1000 keys; expected no more"],
    [
      "entries of one list",
      `{"build": [{"a":1, "b":${list("1", 400_000)}}]}`,
      "build.0.b: has more than 10000 entries",
    ],
    ["values", list(list("1", 9_000), 30), "11: the request has more than 100000 values; expected no more"],
  ] as const;

  test.each(TEXTS)("is refused before it is read for too many %s", async (_, text, told) => {
    const { statusCode, payload } = await post("/api/response", text);
    expect([statusCode, payload]).toEqual([400, expect.stringContaining(told)]);
  });

  test("says of very many unknown keys the first, and of a long text its beginning", async () => {
    const keys = Object.fromEntries(Array.from({ length: 900 }, (_, index) => [`k${index}`, 1]));
    const unknown = await post("/api/response", { build: PLAN, ...keys });
    expect(unknown.payload).toContain(String.raw`unknown key \"k4\"; known: `);
    expect(unknown.payload).toContain("; and 895 more");
    expect(unknown.payload.length).toBeLessThan(5_000);
    const long = "9".repeat(500_000);
    for (const body of [{ frequencies: [long] }, { settings: { lever: long } }, { [long]: 1 }]) {
      const { statusCode, payload } = await post("/api/response", { build: PLAN, ...body });
      expect(statusCode).toBe(400);
      expect(payload.length).toBeLessThan(5_000);
    }
  });
});

describe("JSON nested a hundred thousand deep", () => {
  const DEPTH = 100_000;
  const NESTED = [
    ["lists", "[".repeat(DEPTH) + "]".repeat(DEPTH)],
    ["objects", `${'{"a":'.repeat(DEPTH)}1${"}".repeat(DEPTH)}`],
    ["lists beside a key that looks suspicious", `["\\u0041constructor", ${"[".repeat(DEPTH)}${"]".repeat(DEPTH)}]`],
    ["lists that never end", "[".repeat(DEPTH)],
  ] as const;
  const FIELDS = ["build", "settings", "sweep"];

  function expectRefusal({ statusCode, payload }: { statusCode: number; payload: string }) {
    expect(statusCode).toBe(400);
    expect(payload).toContain("expected");
    expect(payload).not.toMatch(/call stack|RangeError/i);
  }

  test.each(NESTED)("is refused in a body, and says what was expected: %s", async (_, nested) => {
    for (const url of ["/api/expand", "/api/response", "/api/bench"]) expectRefusal(await post(url, nested));
    for (const field of FIELDS) {
      const build = field === "build" ? "" : `, "build": ${JSON.stringify(PLAN)}`;
      expectRefusal(await post("/api/response", `{"${field}": ${nested}${build}}`));
    }
  });

  test("is refused in a form whose field says that it is JSON", async () => {
    const form = multipart([{ name: "request", content: NESTED[0][1] }]);
    const payload = Buffer.from(
      form.payload.toString().replace('name="request"', 'name="request"\r\nContent-Type: application/json'),
    );
    expectRefusal(await app.inject({ method: "POST", url: "/api/preview", headers: form.headers, payload }));
  });

  test("is refused in a form whose request is a file, too long a one as well", async () => {
    const inFile = (content: string) =>
      app.inject({
        method: "POST",
        url: "/api/preview",
        ...multipart([{ name: "request", content, filename: "request.json" }]),
      });
    expectRefusal(await inFile(NESTED[0][1]));
    const long = await inFile(JSON.stringify({ build: "x".repeat(MAX_BODY_BYTES) }));
    expect([long.statusCode, long.payload]).toEqual([413, expect.stringContaining("request: expected at most")]);
  });

  test.each(NESTED)("is refused in a form: %s", async (_, nested) => {
    const contents = [nested, ...FIELDS.map((field) => `{"build": ${JSON.stringify(PLAN)}, "${field}": ${nested}}`)];
    for (const content of contents) {
      const form = multipart([
        { name: "request", content },
        { name: "signal", content: "RIFF", filename: "a.wav" },
      ]);
      expectRefusal(await app.inject({ method: "POST", url: "/api/previews", ...form }));
    }
  });

  test.each(NESTED)("is refused in a link: %s", async (_, nested) => {
    const answer = await app.inject({ url: `/api/link/${linkOf(`{"build": ${nested}}`)}` });
    expect([answer.statusCode, answer.payload]).toEqual([400, expect.not.stringMatching(/call stack|RangeError/i)]);
  });
});

const NASTY = '"><script>alert(1)</script>\r\nSet-Cookie: a=b\r\n=cmd|calc!A1../../x';

describe("words of a build", () => {
  test("stay words in the page that a link opens", async () => {
    const { code } = (await post("/api/link", { build: { ...PLAN, title: NASTY.slice(0, 60) } })).json();
    const answer = await app.inject({ url: `/b/${code}` });
    expect(answer.statusCode).toBe(200);
    expect(answer.payload).not.toContain("<script>alert");
    expect(answer.payload).toContain("&lt;script&gt;");
  });

  test("stay words in the page of a link that cannot be opened", async () => {
    for (const code of [
      linkOf(`{"build": {"presolder": 1, ${JSON.stringify(NASTY)}: 1}}`),
      encodeURIComponent(NASTY),
    ]) {
      const answer = await app.inject({ url: `/b/${code}` });
      expect(answer.statusCode).toBe(400);
      expect(answer.payload).not.toContain("<script");
      expect(answer.headers["set-cookie"]).toBeUndefined();
    }
  });

  test("never reach a header", async () => {
    const build = { ...PLAN, title: NASTY.slice(0, 60) };
    const { code } = (await post("/api/link", { build })).json();
    const answers = [
      await post("/api/preview", { build }),
      await post("/api/previews", { build, sweep: { tone: [10] } }),
      await app.inject({ url: `/api/preview.wav?build=${code}` }),
      await app.inject({ url: `/b/${code}` }),
    ];
    for (const { statusCode, headers } of answers) {
      expect(statusCode).toBe(200);
      expect(JSON.stringify(headers)).not.toMatch(/alert|cookie|calc/i);
    }
  });

  test("become file names that stay in their directory and cells that are no formula", async () => {
    const base = threeSingles() as { parts: Record<string, object> };
    const parts = Object.entries(base.parts).map(([name, part]) => [name, { ...part, label: `=${NASTY.slice(-50)}` }]);
    const build = { ...base, title: NASTY.slice(0, 60), parts: Object.fromEntries(parts) };
    const answer = await post("/api/previews", { build, sweep: { tone: [0, 10] } });
    expect(answer.statusCode).toBe(200);
    const files = unzipSync(answer.rawPayload);
    for (const name of Object.keys(files)) expect(name).toMatch(/^[a-z0-9-]+\.(wav|csv|json)$/);
    const head = Buffer.from(files["response.csv"]!).toString().split("\r\n")[0]!;
    for (const cell of head.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/))
      expect(cell.replace(/^"/, "")).not.toMatch(/^[=+\-@]/);
  });

  test.each(["=1+1", "+1", "-1", "@x", "\tx", "\rx"])("cannot begin a cell as a formula: %j", (text) => {
    expect(csvCell(text).replace(/^"/, "").startsWith("'")).toBe(true);
  });

  test.each(["../../etc/passwd", "C:\\x", "a/b", "con\0x", "é🎸", "", ".", ".."])(
    "make a plain file name: %j",
    (label) => {
      expect(fileName(0, label, 1)).toMatch(/^01-[a-z0-9-]+\.wav$/);
    },
  );
});

describe("the headers of every answer", () => {
  test("allow no script, style, frame or form but the service's own, nor guessing of types", async () => {
    const { code } = (await post("/api/link", { build: PLAN })).json();
    const urls = [
      "/",
      `/b/${code}`,
      "/b/broken",
      "/api/signals",
      "/nothing",
      `/api/preview.wav?build=${code}&signal=click`,
    ];
    for (const url of urls) {
      const { headers } = await app.inject({ url });
      const policy = String(headers["content-security-policy"]);
      const directives = new Map(
        policy.split(";").map((directive) => directive.trim().split(/ (.*)/) as [string, string]),
      );
      expect(directives.get("default-src")).toBe("'none'");
      expect(directives.get("script-src")).toBe("'self'");
      expect(directives.get("frame-ancestors")).toBe("'none'");
      expect(directives.get("base-uri")).toBe("'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      expect(headers["x-content-type-options"]).toBe("nosniff");
      expect(headers["referrer-policy"]).toBe("no-referrer");
      expect(headers["x-powered-by"]).toBeUndefined();
      expect(headers["set-cookie"]).toBeUndefined();
    }
  });

  test("are there over a socket too, and broken HTTP gets 400", async () => {
    const port = await listening(await serviceWith());
    const { headers } = await call({ port, path: "/healthz", method: "GET" });
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    const socket = connect(port, "127.0.0.1").setEncoding("latin1");
    socket.write("NO HTTP AT ALL\r\n\r\n");
    const answer = await socket.toArray();
    expect(answer.join("")).toMatch(/^HTTP\/1\.1 400 /);
  });
});
