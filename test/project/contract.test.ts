import { readdirSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import * as z from "zod";

const SRC = resolve("src");
const read = (file: string) => readFileSync(resolve(SRC, file), "utf8");
const sourcesOf = (folder: string) =>
  readdirSync(resolve(SRC, folder), { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .map((path) => `${folder}/${path}`);

interface Import {
  readonly target: string;
  readonly isType: boolean;
}

function importsOf(file: string): Import[] {
  const found = read(file).matchAll(/^(?:import|export)\s+(type\s)?[^"';]*?"(\.[^"]+\.ts)"/gms);
  return [...found].map(([, type, path]) => ({
    target: relative(SRC, resolve(SRC, dirname(file), path!)),
    isType: type !== undefined,
  }));
}

/** Everything that a file loads when it runs. */
function loadedBy(file: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const { target, isType } of importsOf(file)) if (!isType) loadedBy(target, seen);
  return seen;
}

/** The names of every object in a schema, however deep. */
function shapesOf(schema: unknown, found: (readonly string[])[] = []): (readonly string[])[] {
  if (schema instanceof z.ZodObject) {
    found.push(Object.keys(schema.shape));
    for (const field of Object.values(schema.shape)) shapesOf(field, found);
  } else if (schema instanceof z.ZodUnion) for (const option of schema.options) shapesOf(option, found);
  else if (schema instanceof z.ZodTuple) for (const item of schema.def.items) shapesOf(item, found);
  else if (schema instanceof z.ZodArray) shapesOf(schema.element, found);
  else if (schema instanceof z.ZodRecord) shapesOf(schema.valueType, found);
  else if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable) shapesOf(schema.unwrap(), found);
  return found;
}

async function answerShapes(): Promise<(readonly string[])[]> {
  const modules = await Promise.all(sourcesOf("contract").map((file) => import(resolve(SRC, file))));
  return modules.flatMap((module: Record<string, unknown>) =>
    Object.entries(module).flatMap(([name, value]) => {
      if (/(Answer|Content)Schema$/.test(name)) return shapesOf(value);
      const { content = {} } = value as { content?: Record<string, { schema: unknown }> };
      return Object.values(content).flatMap(({ schema }) => shapesOf(schema));
    }),
  );
}

/** The names that each object type of a file declares, nested ones apart. */
function declaredShapes(text: string): string[][] {
  const shapes: string[][] = [];
  for (const { index } of text.matchAll(/^(?:export )?(?:interface|type) \w+[^;]*?\{/gm)) {
    const open: string[][] = [];
    for (const [, brace, name] of text.slice(index).matchAll(/([{}])|(\w+)\??(?=[:(])/g)) {
      if (brace === "{") open.push([]);
      else if (brace === "}") shapes.push(open.pop()!);
      else open.at(-1)?.push(name!);
      if (brace === "}" && open.length === 0) break;
    }
  }
  return shapes;
}

/** Two names that an answer has too may mean something else; three are a copy. */
const FEWEST_NAMES = 3;

describe("what crosses the wire", () => {
  const page = sourcesOf("page");

  test("is loaded by no page: types only", () => {
    const wrong = page.flatMap((file) =>
      importsOf(file)
        .filter(({ target, isType }) => target.startsWith("contract/") && !isType)
        .map(({ target }) => `${file} loads ${target}`),
    );
    expect(wrong).toEqual([]);
    const loaded = [...loadedBy("page/main.ts")];
    expect(loaded.length).toBeGreaterThan(60);
    expect(loaded.filter((file) => file.startsWith("contract/"))).toEqual([]);
  });

  test("is asked for by the page through the client alone, which knows each answer by its path", () => {
    const askers = page.filter((file) => /(?<![#.\w])fetch\(/.test(read(file)));
    expect(askers).toEqual(["page/server/client.ts"]);
    expect(page.filter((file) => /\b(?:get|post)Json</.test(read(file)))).toEqual(["page/server/client.ts"]);
  });

  test("is written down once: no type of the page restates an answer", async () => {
    const answers = await answerShapes();
    expect(answers.length).toBeGreaterThan(40);
    const copies = page.flatMap((file) =>
      declaredShapes(read(file))
        .filter((names) => names.length >= FEWEST_NAMES)
        .filter((names) => answers.some((answer) => names.every((name) => answer.includes(name))))
        .map((names) => `${file}: ${names.join(", ")}`),
    );
    expect(copies).toEqual([]);
  });

  test("has its schemas here and nowhere else", () => {
    const schemas = [...sourcesOf("server"), ...page].filter((file) =>
      /\bz\.(?:object|strictObject)\(/.test(read(file)),
    );
    expect(schemas).toEqual([]);
  });
});
