import { existsSync, readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildApp } from "../../src/server/app.ts";

const README = readFileSync("README.md", "utf8");
const blocksOf = (language: string) =>
  [...README.matchAll(new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``, "g"))].map(([, block]) => block!.trim());
const shellBlocks = blocksOf("sh");

function bodyOf(block: string): object {
  return JSON.parse(/-d '([\s\S]*)'/.exec(block)![1]!);
}

/** The answer as the text shows it: numbers to the digits that stand there, fields that are left out left out. */
function asShown(answer: unknown, shown: unknown): unknown {
  if (typeof shown === "number" && typeof answer === "number") {
    const decimals = String(shown).split(".")[1]?.length ?? 0;
    return Number(answer.toFixed(decimals));
  }
  if (Array.isArray(shown) && Array.isArray(answer)) return answer.map((item, index) => asShown(item, shown[index]));
  if (typeof shown !== "object" || shown === null || typeof answer !== "object" || answer === null) return answer;
  const fields = answer as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.entries(shown).map(([key, value]) => [key, asShown(fields[key], value)]));
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

  test("is read in one sitting", () => {
    expect(README.split("\n").length).toBeLessThanOrEqual(130);
  });

  test("has a request whose answer is the one that stands below it", async () => {
    const example = shellBlocks.find((block) => block.includes("/api/response"))!;
    const answer = await app.inject({ method: "POST", url: "/api/response", payload: bodyOf(example) });
    expect(answer.statusCode).toBe(200);
    const shown = JSON.parse(blocksOf("json")[0]!);
    expect(asShown(answer.json(), shown)).toEqual(shown);
    expect(shown.curves[0].magnitude).toHaveLength(3);
  });

  test("leads only to files that are there and pages that the service has", async () => {
    const targets = [...README.matchAll(/\]\(([^)]+)\)/g)].map(([, target]) => target!);
    const local = targets.filter((target) => !target.startsWith("http"));
    expect(local.filter((path) => !existsSync(path))).toEqual([]);
    const pages = targets.filter((target) => target.startsWith("http")).map((target) => new URL(target).pathname);
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) expect([page, (await app.inject(page)).statusCode]).toEqual([page, 200]);
  });

  test("shows a picture that loads quickly", () => {
    const path = /!\[[^\]]+\]\((public\/\S+\.png)\)/.exec(README)![1]!;
    const picture = readFileSync(path);
    expect(picture.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(picture.length).toBeLessThan(200_000);
  });
});
