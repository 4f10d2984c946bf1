import type { ImpulseQuery } from "../../../contract/impulse.ts";
import { type ImpulseAnswer, type ImpulseRequest, renderImpulse } from "../../../render/impulse.ts";
import { readCoded, requireWith, settingsInAddress } from "../../http/address-request.ts";
import type { Job } from "../../work/job.ts";

/** Settings of the build to divide by are given as `over.lever=2`. */
const OVER_PREFIX = "over.";
const QUERY_KEYS = ["build", "rate", "coil", "over"];

function read(query: ImpulseQuery): ImpulseRequest {
  const overSettings = settingsInAddress(query, QUERY_KEYS, OVER_PREFIX);
  const known = [...QUERY_KEYS, ...Object.keys(overSettings).map((key) => OVER_PREFIX + key)];
  const coded = readCoded("build", query.build, settingsInAddress(query, known), "query");
  const { over, coil, rate: sampleRateHz } = query;
  const hasOver = over !== undefined;
  requireWith("over", hasOver || Object.keys(overSettings).length === 0, "is missing; over. settings need a build");
  requireWith("coil", !hasOver || coil === undefined, "expected coil or over, not both");
  return {
    ...coded,
    sampleRateHz,
    coil,
    over: hasOver ? readCoded("over", over, overSettings, "query.over") : undefined,
  };
}

export const impulseJob = { read, run: renderImpulse, size: () => "small", gate: "render" } satisfies Job<
  ImpulseRequest,
  ImpulseAnswer
>;
