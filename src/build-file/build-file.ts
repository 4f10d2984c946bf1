import { faultAt, type InputFault, refused } from "../errors.ts";
import { bodyFaults } from "./bodies/body-faults.ts";
import { LugTable, lugsOfPart } from "./lugs.ts";
import { suggestion } from "./nearest.ts";
import { partsOfKind } from "./parts-of-kind.ts";
import { type Build, longFormSchema, type Pickup } from "./schema.ts";
import { parseOrThrow } from "./zod-tools.ts";

/** Names of leads on lugs that the pickup has not. */
function leadFaults(name: string, pickup: Pickup): InputFault[] {
  const lugs = lugsOfPart(name, pickup).map(({ local }) => local);
  return Object.keys(pickup.leads ?? {})
    .filter((lug) => !lugs.includes(lug))
    .map((lug) => ({
      path: `parts.${name}.leads.${lug}`,
      message: `has no lug "${lug}"${suggestion(lug, lugs)}; expected ${lugs.map((each) => `"${each}"`).join(", ")}`,
    }));
}

function partFaults(build: Build): InputFault[] {
  const faults: InputFault[] = [];
  const jacks = partsOfKind(build, "jack");
  if (jacks.length !== 1) {
    const found = jacks.length === 0 ? "there is no jack" : `there are ${jacks.length} jacks`;
    faults.push({ path: "parts", message: `${found}; expected exactly one part of kind "jack"` });
  }
  for (const [name, pickup] of partsOfKind(build, "pickup")) {
    faults.push(...leadFaults(name, pickup));
    if (Object.keys(pickup.coils).length === 2) continue;
    if (pickup.coupling !== undefined)
      faults.push({ path: `parts.${name}.coupling`, message: "expected two coils for a coupling" });
  }
  return [...faults, ...Object.entries(build.parts).flatMap(([name, part]) => bodyFaults(`parts.${name}`, part))];
}

function wireFaults(build: Build): InputFault[] {
  const table = new LugTable(build.parts);
  return build.wires.flatMap((wire, index) => {
    const unknown = (["from", "to"] as const).filter((end) => table.find(wire[end]) === undefined);
    if (unknown.length === 0 && table.find(wire.from) === table.find(wire.to))
      return [{ path: `wires.${index}.to`, message: `joins a lug with itself, "${wire.to}"; expected another lug` }];
    return unknown.map((end) => ({ path: `wires.${index}.${end}`, message: table.complaint(wire[end]) }));
  });
}

/**
 * Reads a long-form build file.
 * @throws PresolderError BUILD_INVALID with one fault for every field at fault; paths begin with `build`.
 */
export function parseLongForm(input: unknown): Build {
  if (typeof input !== "object" || input === null || Array.isArray(input))
    throw faultAt("BUILD_INVALID", "build", "expected a JSON object, the build file");
  const build = parseOrThrow(longFormSchema, input, "BUILD_INVALID", ["build"]);
  const faults = [...partFaults(build), ...wireFaults(build)].map(({ path, message }) => ({
    path: `build.${path}`,
    message,
  }));
  if (faults.length > 0) throw refused("BUILD_INVALID", faults);
  return build;
}
