import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildApp } from "../../src/server/app.ts";

const README = readFileSync("README.md", "utf8");
const shellBlocks = [...README.matchAll(/```sh\n([\s\S]*?)```/g)].map(([, block]) => block!.trim());

function bodyOf(block: string): unknown {
  return JSON.parse(/-d '([\s\S]*)'/.exec(block)![1]!);
}

describe("README", () => {
  let app: Awaited<ReturnType<typeof buildApp>>;
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  });
  afterAll(() => app.close());

  test("begins with exactly the two commands that run and test the service", () => {
    expect(shellBlocks.slice(0, 2)).toEqual(["npm ci && npm start", "npm ci && npm test"]);
  });

  test("has a curve example whose answer is what the text says, and a second position too", async () => {
    const example = shellBlocks.find((block) => block.includes("/api/response"))!;
    const answer = await app.inject({ method: "POST", url: "/api/response", payload: bodyOf(example) as object });
    expect(answer.statusCode).toBe(200);
    const { frequencies, curves } = answer.json();
    expect(frequencies).toEqual([100, 1000, 5000]);
    expect(curves).toHaveLength(1);
    expect(curves[0].magnitude).toHaveLength(3);
    const quoted = /such as "([^"]+)" here/.exec(README.replaceAll("\n", " "))![1];
    expect(curves[0].label).toBe(quoted);
    const second = { ...(bodyOf(example) as object), settings: { lever: 2 } };
    const other = await app.inject({ method: "POST", url: "/api/response", payload: second });
    const quotedSecond = /or "([^"]+)" in position 2/.exec(README.replaceAll("\n", " "))![1];
    expect(other.json().curves[0].label).toBe(quotedSecond);
  });

  test("names only calls that the OpenAPI document has, and leaves none out", async () => {
    const { paths } = (await app.inject("/api/openapi.json")).json() as { paths: Record<string, object> };
    const known = Object.keys(paths).map((path) => path.replace(/\{[^}]*\}/, ":id"));
    const table = /\| call \| gives \|\n([\s\S]*?)\n\n/.exec(README)![1]!;
    const named = [...table.matchAll(/`(?:GET |POST )?(\/[^`?]*)/g)].map(([, path]) => path!);
    expect(named.filter((path) => path.startsWith("/api/") && !known.includes(path))).toEqual([]);
    expect(known.filter((path) => !named.some((name) => path.startsWith(name)))).toEqual([]);
  });
});
