import { setImmediate as nextTurn } from "node:timers/promises";
import multipart from "@fastify/multipart";
import type { FastifyReply, FastifyRequest } from "fastify";
import { faultAt, type PresolderError } from "../../errors.ts";
import {
  MAX_BODY_BYTES,
  MAX_CABINET_SECONDS,
  MAX_UPLOAD_BYTES,
  MAX_UPLOADS_BYTES,
  MAX_UPLOADS_BYTES_PER_CLIENT,
} from "../../limits.ts";
import { CABINET_FIELD } from "../../listening/cabinet/read-cabinet.ts";
import { ByteBudget } from "../care/byte-budget.ts";
import { clientOf } from "../care/client.ts";
import { whenClosed } from "../care/when-closed.ts";
import type { App } from "../routes/route-context.ts";
import { parseJson } from "./json.ts";

/** The field that holds the JSON request, and the one that holds the sound file. */
const REQUEST_FIELD = "request";
const FILE_FIELD = "signal";

const wavFile = { type: "string", format: "binary", description: "a WAV file, mono or stereo, up to a minute" };

/** The multipart form as OpenAPI describes it. */
export const MULTIPART_SCHEMA = {
  type: "object",
  required: [REQUEST_FIELD, FILE_FIELD],
  properties: {
    [REQUEST_FIELD]: { type: "string", description: "the JSON request, without `signal` and `rate`" },
    [FILE_FIELD]: wavFile,
  },
};

/** The form of a call for sound, which may bring a cabinet as well, or alone beside a built-in signal. */
export const SOUND_FORM_SCHEMA = {
  ...MULTIPART_SCHEMA,
  required: [REQUEST_FIELD],
  properties: {
    ...MULTIPART_SCHEMA.properties,
    [CABINET_FIELD]: {
      ...wavFile,
      description: `a cabinet's impulse response to be heard through, a WAV file of up to ${MAX_CABINET_SECONDS} s`,
    },
  },
};

/** As `MULTIPART_SCHEMA`, of a call that `readUploads` reads. */
export function multipartSchemaOf(fields: readonly string[]) {
  const files = Object.fromEntries(fields.map((field) => [field, wavFile]));
  return {
    type: "object",
    required: [REQUEST_FIELD],
    properties: { [REQUEST_FIELD]: { type: "string", description: "the JSON request" }, ...files },
  };
}

declare module "fastify" {
  interface FastifyRequest {
    /** A sound file that came with the request, in memory that threads share. */
    upload: Uint8Array | undefined;
    /** Several, by the field that each came in. */
    uploads: Readonly<Record<string, Uint8Array>> | undefined;
  }
  interface FastifyInstance {
    uploadBudget: ByteBudget;
  }
}

export interface UploadBounds {
  readonly fileBytes: number;
  /** Of all uploads in memory at a time. */
  readonly allBytes: number;
  /** Of one client's. */
  readonly clientBytes: number;
}

const USUAL_BOUNDS: UploadBounds = {
  fileBytes: MAX_UPLOAD_BYTES,
  allBytes: MAX_UPLOADS_BYTES,
  clientBytes: MAX_UPLOADS_BYTES_PER_CLIENT,
};

/** A request that says it is JSON comes as a file does, since a field of that type would be parsed before its size is looked at. */
function isPartAFile(name: string | undefined, type: string | undefined, fileName: string | undefined): boolean {
  const isTyped = name === REQUEST_FIELD && type?.startsWith("application/json");
  return fileName !== undefined || type === "application/octet-stream" || isTyped === true;
}

export async function registerUploads(app: App, { fileBytes, allBytes, clientBytes } = USUAL_BOUNDS): Promise<void> {
  await app.register(multipart, {
    limits: { fieldSize: MAX_BODY_BYTES, fields: 1, files: 2, fileSize: fileBytes, parts: 2 },
    isPartAFile,
  });
  app.decorateRequest("upload", undefined);
  app.decorateRequest("uploads", undefined);
  app.decorate("uploadBudget", new ByteBudget(allBytes, clientBytes));
}

/** What is copied in a few milliseconds; the event loop turns in between. */
const BYTES_A_TURN = 1 << 22;

/** Copied once into shared memory, so that no worker needs a copy of its own. `onBytes` hears of every piece before it is kept. */
async function collect(stream: AsyncIterable<Buffer>, onBytes: (count: number) => void): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of stream) {
    onBytes(chunk.length);
    chunks.push(chunk);
    length += chunk.length;
  }
  const bytes = new Uint8Array(new SharedArrayBuffer(length));
  let at = 0;
  let turn = BYTES_A_TURN;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
    if (at < turn) continue;
    turn = at + BYTES_A_TURN;
    await nextTurn();
  }
  return bytes;
}

/** A request that came as a file. @throws PresolderError LIMIT_EXCEEDED beyond MAX_BODY_BYTES */
async function textOf(stream: AsyncIterable<Buffer>): Promise<string> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of stream) {
    length += chunk.length;
    if (length > MAX_BODY_BYTES) throw tooLong();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString();
}

/** A part without a name arrives with none, whatever its type says. */
function unknownPart(name: string | undefined, kind: "field" | "file", files: readonly string[]): PresolderError {
  const expected = `expected a field "${REQUEST_FIELD}" with the JSON request and a file "${files.join('", "')}"`;
  return faultAt("REQUEST_INVALID", (name || "body").slice(0, 60), `unknown ${kind}; ${expected}`);
}

function tooLong(): PresolderError {
  const message = `expected at most ${MAX_BODY_BYTES} bytes`;
  return faultAt("LIMIT_EXCEEDED", REQUEST_FIELD, message);
}

/** Takes room for an upload as it comes, and gives it back when the answer is out. */
function takeRoom(request: FastifyRequest, reply: FastifyReply): (count: number) => void {
  const { uploadBudget } = request.server;
  const client = clientOf(request.ip);
  let taken = 0;
  whenClosed(reply, () => uploadBudget.give(client, taken));
  return (count) => {
    uploadBudget.take(client, count, request.isLoneLocal);
    taken += count;
  };
}

/** The parser of forms throws plain errors without a status; what it complains of is the caller's. */
function formFault(error: unknown): unknown {
  if ((error as object).constructor !== Error) return error;
  return faultAt("REQUEST_INVALID", "body", `expected a whole multipart form; ${(error as Error).message}`);
}

/** A `preValidation` hook: takes a multipart request apart, so that its JSON is validated like any other body. */
export async function readUpload(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  if (!request.isMultipart()) return;
  const { body, files } = await readFormOf(request, reply, [FILE_FIELD]);
  request.upload = files[FILE_FIELD];
  if (!request.upload) {
    throw faultAt("REQUEST_INVALID", FILE_FIELD, "is missing; expected a WAV file");
  }
  request.body = body;
}

/** As `readUpload`, for a request with up to one file in each of several fields; they go to `request.uploads`. */
export function readUploads(fields: readonly string[]) {
  return async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
    if (!request.isMultipart()) return;
    const { body, files } = await readFormOf(request, reply, fields);
    request.uploads = files;
    request.body = body;
  };
}

/** As `readUploads`, for a request for sound: a file to be played, a cabinet to be heard through, or both. */
export async function readSoundUploads(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  if (!request.isMultipart()) return;
  const { body, files } = await readFormOf(request, reply, [FILE_FIELD, CABINET_FIELD]);
  if (Object.keys(files).length === 0) throw faultAt("REQUEST_INVALID", FILE_FIELD, "is missing; expected a WAV file");
  request.uploads = files;
  request.body = body;
}

interface Form {
  readonly body: unknown;
  readonly files: Record<string, Uint8Array>;
}

async function readFormOf(request: FastifyRequest, reply: FastifyReply, fields: readonly string[]): Promise<Form> {
  const onBytes = takeRoom(request, reply);
  try {
    return await readForm(request, fields, onBytes);
  } catch (error) {
    throw formFault(error);
  }
}

async function readForm(
  request: FastifyRequest,
  fields: readonly string[],
  onBytes: (count: number) => void,
): Promise<Form> {
  let body: unknown;
  const files: Record<string, Uint8Array> = {};
  const count = fields.length + 1;
  for await (const part of request.parts({ limits: { files: count, parts: count } })) {
    if (part.fieldname === REQUEST_FIELD) {
      if (part.type === "field" && part.valueTruncated) throw tooLong();
      body = parseJson(part.type === "file" ? await textOf(part.file) : String(part.value), REQUEST_FIELD);
    } else {
      if (part.type === "field" || !fields.includes(part.fieldname))
        throw unknownPart(part.fieldname, part.type, fields);
      files[part.fieldname] = await collect(part.file, onBytes);
    }
  }
  if (body === undefined) {
    throw faultAt("REQUEST_INVALID", REQUEST_FIELD, "is missing; expected the JSON request");
  }
  return { body, files };
}
