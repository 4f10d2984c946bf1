import { suggestion } from "../../build-file/nearest.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type RawSettings } from "../../build-file/settings.ts";
import { defaultSweep, expandSweep } from "../../build-file/sweep.ts";
import { faultAt, type InputFault, refused } from "../../errors.ts";
import { MAX_ASKED_CAPS, MAX_DIELECTRIC_WORK } from "../../limits.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { networkSize } from "../solving-effort.ts";
import { type DielectricsAsked, solvedFor } from "./dielectrics.ts";
import { toneCapsOf } from "./tone-caps.ts";

function namedCaps(build: Build, names: readonly string[]): readonly string[] {
  const caps = partsOfKind(build, "cap").map(([name]) => name);
  const faults = names.flatMap((name, index): InputFault[] =>
    caps.includes(name)
      ? []
      : [{ path: `caps.${index}`, message: `there is no cap "${name}"${suggestion(name, caps)}` }],
  );
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  return [...new Set(names)];
}

/** The caps of the tone controls, or whatever caps there are. */
function usualCaps(build: Build): readonly string[] {
  const tone = toneCapsOf(build);
  const caps = tone.length > 0 ? tone : partsOfKind(build, "cap").map(([name]) => name);
  if (caps.length === 0) throw faultAt("REQUEST_INVALID", "build", "has no cap to ask about");
  return caps.slice(0, MAX_ASKED_CAPS);
}

function requireAffordable(asked: DielectricsAsked): void {
  const size = networkSize(new CircuitMaker(asked.build));
  const solved = solvedFor(asked);
  const most = Math.floor(MAX_DIELECTRIC_WORK / size ** 3);
  if (solved <= most) return;
  const message = `${solved} settings of so large a guard would have to be solved; expected at most ${most}: ask of fewer caps`;
  throw faultAt("LIMIT_EXCEEDED", "caps", message);
}

/**
 * What to ask of a guard: the caps by their names, or the usual ones, in every position with tones from 0 to 10.
 * @throws PresolderError REQUEST_INVALID, SETTINGS_INVALID or LIMIT_EXCEEDED, by the field
 */
export function dielectricsAsked(build: Build, names?: readonly string[], settings?: RawSettings): DielectricsAsked {
  const controls = new Controls(build);
  const asked = {
    build,
    caps: names ? namedCaps(build, names) : usualCaps(build),
    settings: expandSweep(controls, defaultSweep(controls), settings),
  };
  requireAffordable(asked);
  return asked;
}
