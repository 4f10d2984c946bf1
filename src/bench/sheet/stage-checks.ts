import type { Connection } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { REFERENCE_CELSIUS } from "../meter/copper.ts";
import { LEADS_OHMS } from "../meter/hobby-meter.ts";
import { ReadingTaker } from "../meter/reading-taker.ts";
import type { Stage } from "./stages.ts";

/** Something to check before going on. */
export interface Check {
  readonly text: string;
  readonly between?: readonly [string, string];
  readonly low?: number | null;
  readonly high?: number | null;
}

function range(low: number | null, high: number | null): string {
  const words = (ohms: number) => showQuantity(ohms, "resistance", 3);
  if (low === null || high === null) return "open";
  return high <= LEADS_OHMS ? `under ${LEADS_OHMS} Ω` : `${words(low)} to ${words(high)}`;
}

function reading(text: string, between: readonly [string, string], low: number | null, high: number | null): Check {
  return { text: `${text}: ${range(low, high)}`, between, low, high };
}

/** Each connection that this stage finished, both of its ends being made now. */
function continuity(finished: readonly Connection[]): Check[] {
  return finished.map(({ from, to }) => reading(`Continuity ${from} to ${to}`, [from, to], 0, LEADS_OHMS));
}

/** The tracks of the stage's pots, as they read with what is connected so far. */
function tracks(build: Build, { parts }: Stage, done: readonly Connection[]): Check[] {
  const pots = parts.filter((name) => build.parts[name]!.kind === "pot");
  if (pots.length === 0) return [];
  const soFar = { ...build, wires: done.map(({ from, to }) => ({ from, to })) };
  const taker = new ReadingTaker(soFar, REFERENCE_CELSIUS);
  const settings = new Controls(build).atRest;
  return pots.map((pot) => {
    const between = [`${pot}.1`, `${pot}.3`] as const;
    const { low, high } = taker.take({ label: pot, between, settings });
    return reading(`Track of ${pot}, lug 1 to lug 3, dial at 10`, between, low, high);
  });
}

function legsNear(stage: Stage, connections: readonly Connection[]): Check[] {
  const legs = stage.joints.filter(
    ({ kind, arrivals }) => kind !== "case" && arrivals.some((number) => connections[number - 1]!.means === "leg"),
  );
  return legs.map(({ lugs }) => ({
    text: `The cap or resistor leg at ${lugs[0]} stands clear of every case; sleeve it.`,
  }));
}

/** The checks after a stage. `done` are the connections with every end made so far, `finished` those made by this stage. */
export function checksAfter(
  build: Build,
  stage: Stage,
  connections: readonly Connection[],
  done: readonly Connection[],
  finished: readonly Connection[],
): Check[] {
  return [
    { text: "Tug every wire of this stage: nothing moves, and every joint is smooth and bright or evenly satin." },
    ...legsNear(stage, connections),
    ...continuity(finished),
    ...tracks(build, stage, done),
  ];
}
