import { parseLongForm } from "../../../src/build-file/build-file.ts";
import type { Build } from "../../../src/build-file/schema.ts";

type WireInput = readonly [string, string];

/** What a test does to a well-wired guard. */
export interface Changes {
  /** Parts to add or to replace outright. */
  readonly parts?: Readonly<Record<string, object>>;
  /** Values to change in parts that are there. */
  readonly change?: Readonly<Record<string, object>>;
  readonly add?: readonly WireInput[];
  readonly remove?: readonly WireInput[];
  readonly rest?: object;
}

export interface Guard {
  readonly parts: Readonly<Record<string, object>>;
  readonly wires: readonly WireInput[];
}

const sameWire = ([a, b]: WireInput, [c, d]: WireInput) => (a === c && b === d) || (a === d && b === c);

function lacking(wires: readonly WireInput[], removed: readonly WireInput[]): WireInput[] {
  for (const gone of removed) {
    if (!wires.some((wire) => sameWire(wire, gone))) throw new Error(`the guard has no wire ${gone.join(" – ")}`);
  }
  return wires.filter((wire) => !removed.some((gone) => sameWire(wire, gone)));
}

/** The guard as a build file, with a test's changes. */
export function inputOf(guard: Guard, { parts, change, add = [], remove = [], rest }: Changes = {}): object {
  const all: Record<string, object> = { ...guard.parts, ...parts };
  for (const [name, values] of Object.entries(change ?? {})) all[name] = { ...all[name], ...values };
  return {
    presolder: 1,
    parts: all,
    wires: [...lacking(guard.wires, remove), ...add],
    cable: { length: "3m", capacitance: "100p" },
    ...rest,
  };
}

export function buildOf(guard: Guard, changes: Changes = {}): Build {
  return parseLongForm(inputOf(guard, changes));
}

export const single = (values: object = {}, rest: object = {}) => ({
  kind: "pickup",
  coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p", ...values } },
  ...rest,
});

export const REVERSED = { winding: "reverse", magnet: "south" };

/** Two coils that cancel hum in series finish to start: slug.start – screw.finish. */
export const humbucker = (rest: object = {}, screw: object = {}) => ({
  kind: "pickup",
  conductors: 4,
  coupling: 0.1,
  coils: {
    slug: { resistance: "4k", inductance: "2.2H", capacitance: "60p" },
    screw: { resistance: "4k", inductance: "2.2H", capacitance: "60p", ...REVERSED, ...screw },
  },
  ...rest,
});

const pot = (role: string, resistance: string, rest: object = {}) => ({
  kind: "pot",
  role,
  resistance,
  taper: "audio",
  ...rest,
});

/** Three single coils, lever, volume, neck tone and middle tone, the middle wound the other way; grounded everywhere. */
export const threeSingles: Guard = {
  parts: {
    bridge: single({ distance: "0.042m" }),
    middle: single({ distance: "0.1m", ...REVERSED }),
    neck: single({ distance: "0.162m" }),
    lever: { kind: "switch", type: "lever-5" },
    volume: pot("volume", "250k"),
    tone1: pot("tone", "250k"),
    tone2: pot("tone", "250k"),
    cap: { kind: "cap", capacitance: "22n" },
    jack: { kind: "jack" },
    claw: { kind: "terminal", role: "claw" },
  },
  wires: [
    ["bridge.hot", "lever.A1"],
    ["middle.hot", "lever.A2"],
    ["neck.hot", "lever.A3"],
    ["lever.A0", "lever.B0"],
    ["lever.A0", "volume.3"],
    ["lever.B2", "tone2.2"],
    ["lever.B3", "tone1.2"],
    ["tone1.1", "tone2.1"],
    ["tone2.1", "cap.a"],
    ["cap.b", "tone2.case"],
    ["tone1.case", "volume.case"],
    ["tone2.case", "volume.case"],
    ["volume.1", "volume.case"],
    ["bridge.ground", "volume.case"],
    ["middle.ground", "volume.case"],
    ["neck.ground", "volume.case"],
    ["claw", "volume.case"],
    ["volume.2", "jack.tip"],
    ["volume.case", "jack.sleeve"],
  ],
};

const { bridge: _bridge, middle: _middle, neck: _neck, ...controls } = threeSingles.parts;

/** `threeSingles` without its pickups and their wires. */
export const harness: Guard = {
  parts: controls,
  wires: threeSingles.wires.filter((wire) => !wire.some((lug) => /^(bridge|middle|neck)\./.test(lug))),
};

/** A pickup of `threeSingles` with its two leads exchanged, which turns its winding and nothing else. */
export function leadsSwapped(pickup: string, lug: string): Required<Pick<Changes, "remove" | "add">> {
  return {
    remove: [
      [`${pickup}.hot`, lug],
      [`${pickup}.ground`, "volume.case"],
    ],
    add: [
      [`${pickup}.ground`, lug],
      [`${pickup}.hot`, "volume.case"],
    ],
  };
}

/** Two four-conductor humbuckers, a toggle, a volume each before it and one tone after it. */
export const twoHumbuckers: Guard = {
  parts: {
    bridge: humbucker({ metal: "cover" }),
    neck: humbucker({ metal: "cover" }),
    toggle: { kind: "switch", type: "toggle-3" },
    volumeB: pot("volume", "500k"),
    volumeN: pot("volume", "500k"),
    tone: pot("tone", "500k"),
    cap: { kind: "cap", capacitance: "22n" },
    jack: { kind: "jack" },
    claw: { kind: "terminal", role: "claw" },
  },
  wires: [
    ...["bridge", "neck"].flatMap((name): WireInput[] => [
      [`${name}.slug.start`, `${name}.screw.finish`],
      [`${name}.screw.start`, "tone.case"],
      [`${name}.shield`, "tone.case"],
    ]),
    ["bridge.slug.finish", "volumeB.3"],
    ["neck.slug.finish", "volumeN.3"],
    ["volumeB.2", "toggle.A1"],
    ["volumeN.2", "toggle.A2"],
    ["volumeB.1", "volumeB.case"],
    ["volumeN.1", "volumeN.case"],
    ["volumeB.case", "tone.case"],
    ["volumeN.case", "tone.case"],
    ["toggle.A0", "jack.tip"],
    ["toggle.A0", "tone.2"],
    ["tone.1", "cap.a"],
    ["cap.b", "tone.case"],
    ["claw", "tone.case"],
    ["tone.case", "jack.sleeve"],
  ],
};

/** One humbucker, one volume, one tone on a push-pull that grounds the coils' junction: the screw coil stays. */
export const splitHumbucker: Guard = {
  parts: {
    bridge: humbucker(),
    volume: pot("volume", "500k"),
    tone: pot("tone", "500k", { drives: "dpdt" }),
    cap: { kind: "cap", capacitance: "22n" },
    jack: { kind: "jack" },
    claw: { kind: "terminal", role: "claw" },
  },
  wires: [
    ["bridge.slug.start", "bridge.screw.finish"],
    ["bridge.slug.finish", "volume.3"],
    ["bridge.screw.start", "volume.case"],
    ["bridge.slug.start", "tone.s.A0"],
    ["tone.s.A2", "volume.3"],
    ["volume.3", "tone.2"],
    ["tone.1", "cap.a"],
    ["cap.b", "tone.case"],
    ["tone.case", "volume.case"],
    ["volume.1", "volume.case"],
    ["volume.2", "jack.tip"],
    ["volume.case", "jack.sleeve"],
    ["claw", "volume.case"],
  ],
};
