import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { scenarioSchema } from "../../../src/build-file/scenario.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (url: string, payload: object, headers = {}) =>
  service.app.inject({ method: "POST", url, payload, headers });

describe("scenarios", () => {
  it("are listed, as many as there are files", async () => {
    const reply = await service.app.inject({ url: "/api/scenarios" });
    const { scenarios } = reply.json();
    expect(scenarios).toHaveLength(readdirSync("scenarios").filter((file) => file.endsWith(".json")).length);
    for (const entry of scenarios) expect(Object.keys(entry)).toEqual(["id", "title", "description", "question"]);
  });

  it("come one at a time with a build that can be read", async () => {
    const { scenarios } = (await service.app.inject({ url: "/api/scenarios" })).json();
    for (const { id } of scenarios) {
      const scenario = scenarioSchema.parse((await service.app.inject({ url: `/api/scenarios/${id}` })).json());
      expect(readBuild(scenario.build).presolder).toBe(1);
    }
  });

  it("of no such name are 404, naming those there are", async () => {
    const reply = await service.app.inject({ url: "/api/scenarios/nothing" });
    expect(reply.statusCode).toBe(404);
    expect(reply.json().detail).toContain("long-cable");
  });
});

describe("POST /api/expand", () => {
  it("turns a plan into the long form", async () => {
    const plan = {
      presolder: 1,
      title: "Guard",
      plan: {
        layout: "lever-5-two-tone",
        pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
        volume: "250k",
        tones: [
          { pot: "250k", cap: "22n", pickups: ["neck"] },
          { pot: "250k", cap: "22n", pickups: ["bridge"] },
        ],
      },
    };
    const reply = await post("/api/expand", { build: plan });
    expect(reply.statusCode).toBe(200);
    expect(parseLongForm(reply.json().build).title).toBe("Guard");
  });

  it("gives a long form back as it is", async () => {
    expect((await post("/api/expand", { build: onePickup() })).json()).toEqual({ build: onePickup() });
  });
});

describe("links", () => {
  const titled = (title: string) => onePickup({ rest: { title } });
  const linkOf = async (build: object, view?: object) =>
    (await post("/api/link", view ? { build, view } : { build }, { host: "guard.example:8080" })).json();

  it("carry the build and the view in themselves", async () => {
    const view = { settings: { tone: 3 }, signal: "strum" };
    const { code, url } = await linkOf(titled("Plain guard"), view);
    expect(url).toBe(`http://guard.example:8080/b/${code}`);
    expect(code).toMatch(/^2[A-Za-z0-9_-]+$/);
    const reply = await service.app.inject({ url: `/api/link/${code}` });
    expect(reply.json()).toEqual({ build: titled("Plain guard"), view });
  });

  it("open the page with the guard's title and description", async () => {
    const { code } = await linkOf(titled("Plain guard"));
    const reply = await service.app.inject({ url: `/b/${code}` });
    expect(reply.statusCode).toBe(200);
    expect(reply.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(reply.body).toContain("<title>Plain guard – Presolder</title>");
    expect(reply.body).toContain('<meta property="og:title" content="Plain guard – Presolder">');
    expect(reply.body).toMatch(/<meta property="og:description" content="A guard with 1 pickup \(pickup\)/);
    expect(reply.body.match(/<meta name="description"/g)).toHaveLength(1);
    expect(reply.body).toMatch(/src="\/built\/[0-9a-f]{12}\/main\.js"/);
  });

  it("escape whatever a title holds", async () => {
    const { code } = await linkOf(titled(`</title><script>alert("1")</script> $& $\` 'x'`));
    const { body } = await service.app.inject({ url: `/b/${code}` });
    expect(body).not.toContain("<script>alert");
    expect(body).toContain(
      "<title>&lt;/title&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; $&amp; $` &#39;x&#39; – Presolder</title>",
    );
  });

  it.each([
    ["cut short", (code: string) => code.slice(0, code.length / 2)],
    ["of another version", (code: string) => `9${code.slice(1)}`],
    ["with a letter changed", (code: string) => `${code.slice(0, 20)}${code[20] === "A" ? "B" : "A"}${code.slice(21)}`],
    ["that hold no build file", () => "1q1bKKk0tLkksSVWyUkpLzClOVaoFAA"],
  ])("%s open a friendly page and a friendly problem", async (_name, broken) => {
    const { code } = await linkOf(titled("Plain guard"));
    const page = await service.app.inject({ url: `/b/${broken(code)}` });
    expect(page.statusCode).toBe(400);
    expect(page.headers["content-type"]).toContain("text/html");
    expect(page.body).toContain("This link cannot be opened");
    const problem = await service.app.inject({ url: `/api/link/${broken(code)}` });
    expect(problem.statusCode).toBe(400);
    expect(problem.json().errors[0].message.length).toBeGreaterThan(10);
  });

  it("that would inflate without end are cut off", async () => {
    const { deflateRawSync } = await import("node:zlib");
    const bomb = `1${deflateRawSync(Buffer.alloc(6_000_000, 32)).toString("base64url")}`;
    expect(bomb.length).toBeLessThan(12_000);
    expect((await service.app.inject({ url: `/api/link/${bomb}` })).json()).toMatchObject({
      type: "urn:presolder:problem:link-invalid",
      status: 400,
    });
  });
});
