import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { type Curve, curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { ohmsBetween } from "./measured.ts";

/**
 * A single coil as the bench cases assume it: 6 kΩ, 2.4 H, 110 pF, no loss resistor. Common practice, no source, within the
 * published 1 to 10 H and 80 to 200 pF (H. E. W. Lemme, Pickup-Geheimnisse: Beschaltung).
 *
 * Levels and peaks in the cases were computed from this circuit outside the project, in NumPy, and fifteen of the levels in
 * ngspice too: the EMF in series with R and L, the winding's capacitance across both, then pots, cable and load. They are given
 * to 0.1 dB and 10 Hz.
 */
export const SINGLE = {
  kind: "pickup",
  coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p" } },
} as const;

/** A humbucker as the bench cases assume it, as one coil: 8 kΩ, 4.5 H, 130 pF. Common practice, no source, as above. */
export const HUMBUCKER = {
  kind: "pickup",
  coils: { coil: { resistance: "8k", inductance: "4.5H", capacitance: "130p" } },
} as const;

/**
 * The cable of the bench cases: 500 pF in all, within the published 300 to 1000 pF (H. E. W. Lemme, as above), on the 1 MΩ of
 * an amplifier's input (B. Judge, Feel the Gain, part 1: guitar input).
 */
const CABLE = { length: 1, capacitance: "500p" };

/** A plan with the bench cases' cable and load. The volume is linear, so that a dial of 5 is electrical 0.5. */
export function guardOf(plan: object): Build {
  return withIdealPots(readBuild({ presolder: 1, plan, cable: CABLE }));
}

/** One pickup on a linear volume and a tone. */
export function oneOn(
  pickup: object,
  volume: string,
  tone: string,
  rest: { tone?: object; plan?: object } = {},
): Build {
  return guardOf({
    layout: "one-pickup",
    pickups: { bridge: pickup },
    volume: { pot: volume, taper: "linear" },
    tones: [{ pot: tone, cap: "22n", ...rest.tone }],
    ...rest.plan,
  });
}

export function longForm(parts: object, wires: unknown[]): Build {
  return withIdealPots(readBuild({ presolder: 1, parts, wires, cable: CABLE }));
}

const settingsIn = (build: Build, raw: RawSettings) => parseSettings(new Controls(build), raw);

/** Level at a frequency, dB re the coil's EMF. */
export function levelAt(build: Build, frequencyHz: number, raw: RawSettings = {}): number {
  return curveIn(build, [frequencyHz], raw).magnitude[0]!;
}

export function curveIn(build: Build, frequenciesHz: readonly number[], raw: RawSettings = {}): Curve {
  return curveOf(new ResponseEngine(build).transfersIn(settingsIn(build, raw)), Float64Array.from(frequenciesHz));
}

/** The top of the curve relative to 80 Hz, and where it stands; the cases measure peaks so. */
export function peakOver80(build: Build, raw: RawSettings = {}): { frequency: number; level: number } | null {
  const curve = curveIn(build, [80, 200], raw);
  if (!curve.peak) return null;
  return { frequency: curve.peak.frequency, level: curve.peak.level + curve.magnitude[1]! - curve.magnitude[0]! };
}

/** What a meter reads at the jack, ohms; null where open. */
export function jackOhms(build: Build, raw: RawSettings = {}): number | null {
  return ohmsBetween(build, "jack.tip", "jack.sleeve", raw);
}
