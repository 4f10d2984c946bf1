import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Build } from "../../../build-file/schema.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import type { ResponseBody } from "../../../contract/response.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_POINTS } from "../../../limits.ts";
import type { CurveReader, CurvesQuestion, CurvesRequest } from "../../../response/curve-reader.ts";
import { curvesJson } from "../../archive/curve-texts.ts";
import type { WorkSize } from "../../work/fair-queue.ts";
import type { Job } from "../../work/job.ts";

/** Points of every curve asked for, each coil's own included. */
export function pointsOf(build: Build, { settings, frequenciesHz, withSources }: CurvesQuestion): number {
  const coils = partsOfKind(build, "pickup").reduce((count, [, { coils }]) => count + Object.keys(coils).length, 0);
  return settings.length * frequenciesHz.length * (withSources ? 1 + coils : 1);
}

function heardOf({ string, fret }: ResponseBody): CurvesQuestion["heard"] {
  if (string !== undefined && fret !== undefined) return { string, fret };
  if (string === undefined && fret === undefined) return undefined;
  const path = string === undefined ? "string" : "fret";
  throw faultAt("REQUEST_INVALID", path, "is missing; a heard curve needs both string and fret");
}

/** @param frequenciesHz those that the body asks for */
function read({ build, controls }: CurveReader, frequenciesHz: Float64Array, body: ResponseBody): CurvesRequest {
  const settings = expandSweep(controls, body.sweep, body.settings);
  const request = { build, settings, frequenciesHz, withSources: body.sources, heard: heardOf(body) };
  const points = pointsOf(build, request);
  if (points <= MAX_POINTS) return request;
  const message = `asks for ${points} points in all; expected at most ${MAX_POINTS}. Ask for fewer settings or frequencies`;
  throw faultAt("LIMIT_EXCEEDED", "frequencies", message);
}

/** About a tenth of a second of solving. */
const MANY_POINTS = 100_000;

export function sizeOfCurves({ settings, frequenciesHz }: CurvesRequest): WorkSize {
  return settings.length * frequenciesHz.length > MANY_POINTS ? "large" : "small";
}

export const responseJob = { read, run: curvesJson, size: sizeOfCurves, gate: "render" } satisfies Job<
  CurvesRequest,
  Uint8Array
>;
