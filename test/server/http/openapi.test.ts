import { describe, expect, it } from "vitest";
import { useService } from "../service.ts";

const service = useService();

interface Operation {
  readonly summary?: string;
  readonly parameters?: { name: string; in: string }[];
  readonly requestBody?: { content: Record<string, { schema: { properties?: object }; example?: object }> };
  readonly responses: Record<string, { content?: Record<string, unknown> }>;
}

async function description() {
  const reply = await service.app.inject({ url: "/api/openapi.json" });
  expect(reply.statusCode).toBe(200);
  return reply.json() as {
    openapi: string;
    paths: Record<string, Record<string, Operation>>;
    components: { schemas: object };
  };
}

/** The address of every route in a printed tree, whose lines give what they add to the line above them. */
function urlsOf(tree: string): string[] {
  const above: string[] = [];
  return tree.split("\n").flatMap((line) => {
    const [, indent, part] = /^([│├└─\s]*)(\S+) \(/.exec(line) ?? [];
    if (indent === undefined) return [];
    const depth = indent.length / 4 - 1;
    above.splice(depth, above.length, part!);
    return [above.join("")];
  });
}

/** Every "$ref" of a document. */
function references(node: unknown): string[] {
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    key === "$ref" && typeof value === "string" ? [value] : references(value),
  );
}

describe("/api/openapi.json", () => {
  it("describes every route under /api and the health checks, each with a summary and its refusals", async () => {
    const { openapi, paths } = await description();
    expect(openapi).toBe("3.1.0");
    const urls = urlsOf(service.app.printRoutes({ commonPrefix: false })).filter((url) =>
      /^\/(api|healthz|readyz)/.test(url),
    );
    const toRead = ["/api/openapi.json", "/api/", "/api"];
    const wanted = urls.map((url) => url.replace(/:(\w+)/g, "{$1}")).filter((url) => !toRead.includes(url));
    expect(wanted.length).toBeGreaterThan(20);
    for (const url of wanted) expect(Object.keys(paths)).toContain(url);
    for (const [url, operations] of Object.entries(paths)) {
      for (const operation of Object.values(operations)) {
        expect(operation.summary?.length, url).toBeGreaterThan(10);
        expect(operation.responses["200"], url).toBeDefined();
      }
    }
  });

  it("refers to nothing that it does not hold", async () => {
    const document = await description();
    const held = (reference: string) =>
      reference
        .replace(/^#\//, "")
        .split("/")
        .reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], document);
    const all = new Set(references(document));
    expect(all.size).toBeGreaterThan(0);
    for (const reference of all) expect(held(reference), reference).toBeDefined();
  });

  it("holds nothing that no call refers to", async () => {
    const document = await description();
    const named = new Set(references(document));
    const unnamed = Object.keys(document.components.schemas).filter(
      (name) => !named.has(`#/components/schemas/${name}`),
    );
    expect(unnamed).toEqual([]);
  });

  it("gives an example of every body, and each is answered", async () => {
    const { paths } = await description();
    for (const [url, { post }] of Object.entries(paths)) {
      if (!post) continue;
      const { example } = post.requestBody!.content["application/json"] ?? {};
      // A call that takes a sound file alone has none.
      if (!example && post.requestBody!.content["multipart/form-data"]) continue;
      const reply = await service.app.inject({ method: "POST", url, payload: example! });
      expect([url, reply.statusCode]).toEqual([url, 200]);
    }
  });

  it("shows what a build file holds, in both of its forms", async () => {
    const { components } = await description();
    const { BuildInput } = components.schemas as unknown as Record<string, { anyOf: { properties: object }[] }>;
    const [longForm, plan] = BuildInput!.anyOf.map(({ properties }) => Object.keys(properties));
    expect(longForm).toEqual(expect.arrayContaining(["presolder", "parts", "wires", "cable", "load"]));
    expect(plan).toEqual(expect.arrayContaining(["presolder", "plan", "cable", "load"]));
  });

  it("shows a sound file beside the JSON in a multipart request", async () => {
    const { paths } = await description();
    for (const url of ["/api/preview", "/api/previews"]) {
      const { content } = paths[url]!.post!.requestBody!;
      expect(content["multipart/form-data"]!.schema.properties).toMatchObject({
        request: { type: "string" },
        signal: { type: "string", format: "binary" },
        cabinet: { type: "string", format: "binary" },
      });
      expect(Object.keys(content["application/json"]!.schema.properties!)).toContain("build");
    }
  });

  it("names the query's keys of the GET calls", async () => {
    const { paths } = await description();
    const names = paths["/api/preview.wav"]!.get!.parameters!.map(({ name }) => name);
    const ofSound = ["build", "signal", "hand", "strings", "rate", "level", "encoding", "hum", "noise", "hiss"];
    expect(names).toEqual([...ofSound, "listening.chain", "listening.drive"]);
  });
});
