import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { type Controls, parseSettings, type RawSettings, type Settings } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";

/** A reading to take. */
export interface ReadingPlan {
  readonly label: string;
  readonly between: readonly [string, string];
  readonly settings: Settings;
  /** The pot to turn through its whole travel, noting the highest reading. */
  readonly sweep?: string;
}

/** Two lugs that a caller asks for. */
export interface ProbeRequest {
  readonly between: readonly [string, string];
  readonly settings?: RawSettings | undefined;
  readonly sweep?: string | undefined;
}

/**
 * A caller's reading as a plan, its names checked against the build.
 * @param path where the request stands in the input, for messages
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field
 */
export function planOf(build: Build, controls: Controls, request: ProbeRequest, path: string): ReadingPlan {
  const table = new LugTable(build.parts);
  for (const [index, lug] of request.between.entries()) {
    if (table.find(lug) === undefined)
      throw faultAt("REQUEST_INVALID", `${path}.between.${index}`, table.complaint(lug));
  }
  const settings = parseSettings(controls, request.settings, `${path}.settings`);
  const { sweep } = request;
  if (sweep === undefined) return { label: request.between.join(" to "), between: request.between, settings };
  const target = controls.resolve(sweep);
  const pot = target && "pots" in target && target.pots.length === 1 ? target.pots[0] : undefined;
  if (pot === undefined) {
    const message = `"${sweep.slice(0, 60)}" names no single pot; expected one of ${controls.pots.join(", ")}`;
    throw faultAt("REQUEST_INVALID", `${path}.sweep`, message);
  }
  return {
    label: `${request.between.join(" to ")}, highest as ${pot} is swept`,
    between: request.between,
    settings,
    sweep: pot,
  };
}
