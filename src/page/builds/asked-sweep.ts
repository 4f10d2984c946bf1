import type { Part } from "../../build-file/schema.ts";
import type { RawSweep } from "../../build-file/sweep.ts";
import type { Reading } from "../state/reading.ts";
import { differencesOf } from "./differences.ts";

/** Where tones and volumes do most of their work. */
const TONES = [10, 5, 2, 0];
const VOLUMES = [10, 7, 4];

/** Whether a part is heard at some dials and not at others; a track's ohms are there at all of them. */
function worksByDial(part: Part | undefined, field: string): boolean {
  if (part?.kind === "pot") return field !== "resistance" && field !== "measured";
  return part?.kind === "cap" || part?.kind === "resistor";
}

/** A sweep's axes that both guards have. */
function shared(sweep: RawSweep, a: Reading, b: Reading): RawSweep {
  const has = ({ controls }: Reading, key: string) => controls.resolve(key) !== undefined;
  return Object.fromEntries(Object.entries(sweep).filter(([key]) => has(a, key) && has(b, key)));
}

/**
 * In which settings two guards are worth comparing: what their example says, or every position of the main switch, and tones and volumes
 * where what differs is heard at some dials only.
 * @param said by the example that the first began as
 */
export function askedSweep(a: Reading, b: Reading, said?: RawSweep): RawSweep {
  if (said) return shared(said, a, b);
  const { main } = a.controls;
  const isSameSwitch = b.controls.main?.name === main?.name;
  const positions = main && isSameSwitch ? { [main.name]: main.table.positions.map((_, index) => index + 1) } : {};
  const byDial = differencesOf(a.source, b.source).some(({ where, isWire }) => {
    const [part = "", field = ""] = where.split(" › ");
    return isWire || worksByDial(a.build.parts[part] ?? b.build.parts[part], field);
  });
  const dials = byDial ? { tone: TONES, volume: VOLUMES } : { tone: [10], volume: [10] };
  return shared({ ...positions, ...dials }, a, b);
}
