import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { checkGuard } from "../../../src/shelf/file/check-guard.ts";
import type { Guard } from "../../../src/shelf/guard.ts";
import { newGuard } from "../../../src/shelf/new-guard.ts";
import { buildText, packed, unpacked } from "../../../src/shelf/packed.ts";
import { BUILDS } from "../../shelf/builds.ts";
import { useService } from "../service.ts";

const service = useService();
const AT = new Date("2026-03-01T18:30:00.000Z");

/** Text that cannot be made shorter, the same at every run. */
const randomText = (length: number) =>
  Array.from({ length: length / 40 }, (_, index) => createHash("sha256").update(String(index)).digest("base64"))
    .join("")
    .slice(0, length);

const guardsUpTo = (count: number): Guard[] =>
  Array.from({ length: count }, (_, index) =>
    newGuard({ name: `Guard ${index + 1}`, file: buildText({ ...BUILDS.long, title: `Guard ${index + 1}` }) }, AT),
  );

async function linkTo(guards: readonly unknown[]) {
  const answer = await service.app.inject({ method: "POST", url: "/api/shelf-link", payload: { guards } });
  return {
    status: answer.statusCode,
    ...(answer.json() as { code: string; url: string; errors: { path: string; message: string }[] }),
  };
}

describe("a shelf's link", () => {
  it("carries guards there and back byte for byte, and opens a page that says how many they are", async () => {
    const guards = [...guardsUpTo(20), newGuard({ name: "odd", file: "\ufeff{ \r\n" }, AT)];
    const { code, url } = await linkTo(guards.map(packed));
    expect(new URL(url).pathname).toBe(`/s/${code}`);
    const content = (await service.app.inject({ url: `/api/shelf-link/${code}` })).json() as { guards: unknown[] };
    expect(content.guards.map((each) => checkGuard(unpacked(each)))).toEqual(guards);
    const page = await service.app.inject({ url: `/s/${code}` });
    expect(page.statusCode).toBe(200);
    expect(page.body).toContain("<title>21 guards for your shelf – Presolder</title>");
  });

  it("that would be too long is refused with the reason", async () => {
    const [guard] = guardsUpTo(1);
    const withFile = (file: string) => ({ ...packed(guard!), build: undefined, file });
    const { status, errors } = await linkTo([withFile(randomText(16_000))]);
    expect(status).toBe(413);
    expect(errors[0]).toMatchObject({
      path: "guards",
      message: expect.stringMatching(/makes a link of \d+ characters; expected at most 12000/),
    });
    const many = await linkTo([withFile("x".repeat(262_100))]);
    expect(many.errors[0]!.message).toMatch(/has \d+ bytes; expected at most 262144/);
  });

  it.each([
    ["no guards", [], "guards"],
    ["a state that nobody knows", [{ ...packed(guardsUpTo(1)[0]!), state: "lost" }], "guards.0.state"],
    ["an id that is none", [{ ...packed(guardsUpTo(1)[0]!), id: "x" }], "guards.0.id"],
    ["a day that is none", [{ ...packed(guardsUpTo(1)[0]!), made: "NaN" }], "guards.0.made"],
    ["a moment that is none", [{ ...packed(guardsUpTo(1)[0]!), changed: "yesterday" }], "guards.0.changed"],
    ["neither build nor file", [{ ...packed(guardsUpTo(1)[0]!), build: undefined }], "guards.0.file"],
    ["a field that nobody knows", [{ ...packed(guardsUpTo(1)[0]!), colour: "green" }], "guards.0.colour"],
  ])("with %s is refused under its field", async (_, guards, path) => {
    const { status, errors } = await linkTo(guards);
    expect(status).toBe(400);
    expect(errors[0]!.path).toBe(path);
  });

  it("is told from a guard's, and damaged ones open a friendly page", async () => {
    const { code } = await linkTo(guardsUpTo(1).map(packed));
    const asBuild = await service.app.inject({ url: `/api/link/${code}` });
    expect(asBuild.json().errors[0].message).toContain("holds a shelf of guards");
    const link = await service.app.inject({ method: "POST", url: "/api/link", payload: { build: BUILDS.plan } });
    const asShelf = await service.app.inject({ url: `/api/shelf-link/${link.json().code}` });
    expect(asShelf.statusCode).toBe(400);
    expect(asShelf.json().errors[0].message).toContain("no shelf of guards");
    for (const url of ["/s/1AAAA", "/s/abc%E0%A4%A"]) {
      const page = await service.app.inject({ url });
      expect(page.statusCode, url).toBe(400);
      expect(page.body).toContain("This link cannot be opened");
    }
  });
});
