import { type SwitchControl, switchControls } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { DIAL_MAX, type Settings } from "../../build-file/settings.ts";
import { wiperFraction, wiperShare } from "../../build-file/taper.ts";
import { type ContactPairs, contactPairs } from "../../wiring/contacts.ts";
import { JOINT_UP_TO_OHMS } from "./hobby-meter.ts";
import { type DcParts, type DcTrack, dcPartsOf } from "./resistors.ts";

/** Nodes beyond the lugs that an edit may hang wires on: a lug lifted from its wires leaves them joined to one of these. */
const SPARE_NODES = 4;

/** Everything an ohmmeter can see of a guard. Edits copy it and change the copy; the arrays are never shared then. */
export interface MeterModel {
  readonly parts: DcParts;
  readonly nodeCount: number;
  readonly firstSpareNode: number;
  readonly controls: readonly SwitchControl[];
  readonly contacts: readonly ContactPairs[];
  readonly wireFrom: Int32Array;
  readonly wireTo: Int32Array;
  /** Ohms of each of `parts.resistors`: Infinity where it is broken, 0 where shorted. For half a track: of the whole. */
  readonly ohms: Float64Array;
  /** Joints that no wire makes: solder bridges, stray strands. */
  readonly bridges: readonly (readonly [number, number])[];
}

/** What is left at the usual end of a track reads like a joint, and is taken as one; more is in every reading. */
const stays = ({ endResistance }: DcTrack["spec"]) => endResistance > JOINT_UP_TO_OHMS;

/** One state of the controls, as the model needs it. */
export interface MeterState {
  readonly positions: readonly number[];
  /** Fraction of each track below its wiper; −1 where a no-load track is lifted. */
  readonly fractions: Float64Array;
}

/** @param celsius temperature of the coils */
export function meterModelOf(build: Build, celsius: number): MeterModel {
  const parts = dcPartsOf(build, celsius);
  const controls = switchControls(build.parts);
  const contacts = controls.map((control) => contactPairs(control, parts.lugs));
  return {
    parts,
    nodeCount: parts.nodeCount + SPARE_NODES,
    firstSpareNode: parts.nodeCount,
    controls,
    contacts,
    wireFrom: Int32Array.from(build.wires, (wire) => parts.lugs.indexOf(wire.from)),
    wireTo: Int32Array.from(build.wires, (wire) => parts.lugs.indexOf(wire.to)),
    ohms: Float64Array.from(parts.resistors, (resistor) => resistor.ohms),
    bridges: [],
  };
}

/** The state that settings put a model in. */
export function meterStateOf({ controls, parts }: MeterModel, settings: Settings): MeterState {
  return {
    positions: controls.map((control) => settings.switches[control.name] ?? 1),
    fractions: Float64Array.from(parts.tracks, ({ pot, spec, noLoad }) => {
      const dial = settings.dials[pot] ?? DIAL_MAX;
      if (noLoad && dial === DIAL_MAX) return -1;
      return stays(spec) ? wiperShare(spec, dial) : wiperFraction(spec, dial);
    }),
  };
}
