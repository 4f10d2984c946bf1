import { LugTable } from "../../build-file/lugs.ts";
import type { OwnProbe } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { Reading } from "../state/reading.ts";

/** What is wrong with a lug's name on this guard, with the nearest name; undefined where the lug is there. */
export function lugComplaint({ build }: Reading, lug: string): string | undefined {
  const table = new LugTable(build.parts);
  return table.find(lug) === undefined ? table.complaint(lug) : undefined;
}

/** Why a probe cannot be read on this guard; undefined where it can. */
export function probeComplaint(reading: Reading, { between }: OwnProbe): string | undefined {
  const missing = between.filter((lug) => lugComplaint(reading, lug) !== undefined);
  return missing.length === 0 ? undefined : `left out: this guard has no ${missing.join(" and no ")}`;
}

/** The probes that this guard has lugs for, in settings that it has. */
export function probesFor(reading: Reading, probes: readonly OwnProbe[]): OwnProbe[] {
  return probes
    .filter((probe) => probeComplaint(reading, probe) === undefined)
    .map(({ between, settings }) => ({ between, settings: fitSettings(reading, settings) }));
}
