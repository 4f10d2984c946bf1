import { readFileSync } from "node:fs";
import swagger from "@fastify/swagger";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { EXAMINE_FILES } from "../../contract/examine/examine-request.ts";
import { RECORDINGS } from "../../contract/measure/measure.ts";
import { TAPS_FILE } from "../../contract/measure/taps.ts";
import { CACHED_FOR_A_WHILE } from "../http/answers/caching.ts";
import { MULTIPART_SCHEMA, multipartSchemaOf, SOUND_FORM_SCHEMA } from "../http/sound-upload.ts";
import { PATHS } from "../paths.ts";
import type { App } from "../routes/route-context.ts";
import { GUIDE, TAGS } from "./guide.ts";
import { referencePage } from "./reference-page.ts";
import { addExamples } from "./request-examples.ts";

type TransformObject = typeof jsonSchemaTransformObject;
type OpenApiDocument = ReturnType<TransformObject>;

/** Calls whose form has files of its own. */
const FORMS: Readonly<Record<string, object>> = {
  "/api/preview": SOUND_FORM_SCHEMA,
  "/api/previews": SOUND_FORM_SCHEMA,
  "/api/measure": multipartSchemaOf(RECORDINGS),
  "/api/examine": multipartSchemaOf(EXAMINE_FILES),
  "/api/taps": multipartSchemaOf([TAPS_FILE]),
};

/** The JSON schema stands under every media type of a body; a multipart one has fields of its own. */
function describeMultipart(document: OpenApiDocument): OpenApiDocument {
  for (const [address, path] of Object.entries(document.paths ?? {})) {
    for (const operation of Object.values(path ?? {})) {
      const content = (operation as { requestBody?: { content?: Record<string, unknown> } }).requestBody?.content;
      if (content?.["multipart/form-data"])
        content["multipart/form-data"] = { schema: FORMS[address] ?? MULTIPART_SCHEMA };
    }
  }
  return document;
}

/** A schema that both requests and answers might use has a form for each; the form that none uses would only be read in vain. */
function dropUnnamed(document: OpenApiDocument): OpenApiDocument {
  const named = JSON.stringify(document);
  const schemas = ("components" in document && document.components?.schemas) || {};
  for (const name of Object.keys(schemas)) {
    if (!named.includes(`"#/components/schemas/${name}"`)) delete schemas[name];
  }
  return document;
}

/** OpenAPI at `/api/openapi.json`, made from the schemas that check the requests, and the same to read at `/api/`. */
export async function registerDocumentation(app: App): Promise<void> {
  const { version, description } = JSON.parse(readFileSync(PATHS.packageFile, "utf8")) as Record<string, string>;
  const transformObject: TransformObject = (document) =>
    addExamples(describeMultipart(dropUnnamed(jsonSchemaTransformObject(document))));
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: { title: "Presolder", version: version!, description: `${description}\n\n${GUIDE}` },
      tags: TAGS,
    },
    transform: jsonSchemaTransform,
    transformObject,
  });
  let text: string | undefined;
  app.get("/api/openapi.json", { schema: { hide: true } }, async (_request, reply) => {
    text ??= JSON.stringify(app.swagger());
    return reply.header("cache-control", CACHED_FOR_A_WHILE).type("application/json; charset=utf-8").send(text);
  });
  const page = referencePage();
  app.get("/api/", { schema: { hide: true } }, async (_request, reply) =>
    reply.header("cache-control", CACHED_FOR_A_WHILE).type("text/html; charset=utf-8").send(page),
  );
  app.get("/api", { schema: { hide: true } }, async (_request, reply) => reply.redirect("/api/", 308));
}
