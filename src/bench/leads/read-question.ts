import { suggestion } from "../../build-file/nearest.ts";
import { faultAt } from "../../errors.ts";
import { endOf, meterLogError, withoutLeads } from "../meter/own/meter-error.ts";
import type { OwnMeter } from "../meter/own/own-meter.ts";
import type { KickSense, LeadsRequest } from "./leads-request.ts";
import { type KickWord, METER_DEVIATION } from "./priors.ts";
import { type CoilCount, METAL, type Question } from "./question.ts";

/** What rows are called where the person says nothing. */
const ONE_ROW = ["poles"];
const TWO_ROWS = ["first row", "second row"];

function uniqueNames(path: string, names: readonly string[]): void {
  const seen = new Set<string>();
  for (const [index, name] of names.entries()) {
    if (seen.has(name))
      throw faultAt("REQUEST_INVALID", `${path}.${index}`, `"${name}" is there twice; expected a name for each`);
    seen.add(name);
  }
}

function indexIn(path: string, what: string, name: string, names: readonly string[]): number {
  const index = names.indexOf(name);
  if (index >= 0) return index;
  const known = names.map((each) => `"${each}"`).join(", ");
  throw faultAt(
    "REQUEST_INVALID",
    path,
    `there is no ${what} "${name}"${suggestion(name, names)}; expected one of ${known}`,
  );
}

interface Rows {
  readonly coils: readonly CoilCount[];
  readonly rows: readonly string[];
}

/** Of two coils each has a row of its own; a pickup with one row has one coil. */
function rowsOf({ coils, rows }: LeadsRequest): Rows {
  if (rows === undefined) {
    if (coils === 1) return { coils: [1], rows: ONE_ROW };
    return { coils: coils === 2 ? [2] : [1, 2], rows: TWO_ROWS };
  }
  uniqueNames("rows", rows);
  if (coils !== undefined && rows.length !== coils)
    throw faultAt("REQUEST_INVALID", "rows", `has ${rows.length}; expected one row for each coil, ${coils}`);
  return { coils: [rows.length as CoilCount], rows };
}

type Shown = Pick<LeadsRequest["readings"][number], "ohms" | "low" | "high">;

function deviationOf({ ohms, low, high }: Shown, meter: OwnMeter | undefined): number {
  const own = meter && ohms !== null ? meterLogError(meter, ohms) : METER_DEVIATION;
  if (!ohms || !low || !high || low > ohms || high < ohms) return own;
  // The display's wandering as ±2 standard deviations.
  return Math.max(own, Math.log(high / low) / 4);
}

/** A meter shows no less than this across a joint; ln 0 would be nothing to weigh. */
const LEAST_OHMS = 0.01;

function shown(ohms: number | null, meter: OwnMeter | undefined): number | null {
  if (ohms === null || (meter && ohms >= endOf(meter))) return null;
  return Math.max(meter ? withoutLeads(meter, ohms) : ohms, LEAST_OHMS);
}

const turned: Readonly<Record<KickWord, KickWord>> = { up: "down", down: "up", none: "none" };

/**
 * A request with its names looked up.
 * @throws PresolderError REQUEST_INVALID, naming the field
 */
export function readQuestion(request: LeadsRequest, sense: KickSense): Question {
  const { leads, temperature, meter } = request;
  uniqueNames("leads", leads);
  const { coils, rows } = rowsOf(request);
  const pair = (path: string, [a, b]: readonly [string, string]) => {
    const ends = [indexIn(`${path}.0`, "lead", a, leads), indexIn(`${path}.1`, "lead", b, leads)] as const;
    if (ends[0] === ends[1]) throw faultAt("REQUEST_INVALID", path, `"${a}" twice; expected two different leads`);
    return ends;
  };
  const readings = request.readings.map((reading, index) => {
    const path = `readings.${index}`;
    const [a, b] = pair(`${path}.between`, reading.between);
    return {
      kind: "ohms" as const,
      a,
      b,
      ohms: shown(reading.ohms, meter),
      deviation: deviationOf(reading, meter),
      path,
    };
  });
  const hasMetal = request.metal !== "none";
  const metal = (request.metal === "none" ? [] : request.metal).map(({ lead, ohms }, index) => {
    const path = `metal.${index}`;
    const a = indexIn(`${path}.lead`, "lead", lead, leads);
    return {
      kind: "ohms" as const,
      a,
      b: METAL,
      ohms: shown(ohms, meter),
      deviation: deviationOf({ ohms }, meter),
      path,
    };
  });
  const kicks = request.kicks.map(({ row, between, kick }, index) => {
    const path = `kicks.${index}`;
    const [plus, minus] = pair(`${path}.between`, between);
    const told = sense === 1 ? kick : turned[kick];
    return { kind: "kick" as const, row: indexIn(`${path}.row`, "row", row, rows), plus, minus, kick: told, path };
  });
  const compass = request.compass.map(({ row, draws }, index) => {
    const path = `compass.${index}`;
    // Unlike poles draw: what draws the needle's north end is a south pole.
    const magnet = draws === "north" ? ("south" as const) : ("north" as const);
    return { kind: "compass" as const, row: indexIn(`${path}.row`, "row", row, rows), magnet, path };
  });
  return {
    leads,
    rows,
    coils,
    hasMetal,
    temperature,
    ...(meter ? { meter } : {}),
    evidence: { ohms: [...readings, ...metal], kicks, compass },
  };
}
