/**
 * Who a fault comes from: the iron, the parts themselves, what moves and wears, a wire that was put elsewhere, or whoever wrote down
 * what was measured and how.
 */
export type Origin = "joint" | "part" | "moving" | "miswired" | "told";

interface FaultShare {
  /** Of a hundred guards with one fault, how many have one of this kind; shared evenly by all places where it can be. */
  readonly share: number;
  readonly origin: Origin;
  /** One of the kind, and several. */
  readonly words: readonly [one: string, several: string];
}

/**
 * What can be wrong with a guard, and how often it is. All of it is common practice, no source: joints and forgotten wires
 * lead, what is turned and plugged wears, parts that fail of themselves are rare, and one particular wrong lug is rarer still.
 */
export const FAULT_SHARES = {
  "wire-open": { share: 28, origin: "joint", words: ["open connection", "open connections"] },
  "joint-open": { share: 4, origin: "joint", words: ["cold joint of several wires", "cold joints of several wires"] },
  "joint-resistive": { share: 7, origin: "joint", words: ["joint with resistance", "joints with resistance"] },
  "wire-loose": {
    share: 3,
    origin: "joint",
    words: ["connection that comes and goes", "connections that come and go"],
  },
  "lugs-shorted": { share: 5, origin: "joint", words: ["pair of lugs that touch", "pairs of lugs that touch"] },
  "shorted-to-case": { share: 3, origin: "joint", words: ["lug on a case", "lugs on a case"] },
  "shorted-to-shield": { share: 2, origin: "joint", words: ["lug on the shielding", "lugs on the shielding"] },
  "leads-swapped": {
    share: 4,
    origin: "miswired",
    words: ["pickup with exchanged leads", "pickups with exchanged leads"],
  },
  "coil-leads-swapped": {
    share: 2,
    origin: "miswired",
    words: ["coil with exchanged ends", "coils with exchanged ends"],
  },
  "outer-lugs-swapped": {
    share: 3,
    origin: "miswired",
    words: ["pot that works backwards", "pots that work backwards"],
  },
  "pot-lugs-swapped": { share: 2, origin: "miswired", words: ["pot with exchanged lugs", "pots with exchanged lugs"] },
  "jack-swapped": { share: 1.5, origin: "miswired", words: ["exchanged jack", "exchanged jacks"] },
  "wrong-switch-lug": {
    share: 1.5,
    origin: "miswired",
    words: ["wire on a wrong switch lug", "wires on a wrong switch lug"],
  },
  "switch-wires-swapped": {
    share: 1.5,
    origin: "miswired",
    words: ["exchange of switch wires", "exchanges of switch wires"],
  },
  "pickups-swapped": { share: 0.7, origin: "miswired", words: ["exchange of pickups", "exchanges of pickups"] },
  "lead-on-wrong-net": { share: 1.5, origin: "miswired", words: ["pickup lead elsewhere", "pickup leads elsewhere"] },
  "wrong-pot-value": {
    share: 4,
    origin: "miswired",
    words: ["pot of another usual value", "pots of another usual value"],
  },
  "pot-value": { share: 2, origin: "part", words: ["pot of an unusual value", "pots of an unusual value"] },
  "coil-open": { share: 2.5, origin: "part", words: ["broken coil", "broken coils"] },
  "coil-shorted": { share: 1, origin: "part", words: ["shorted coil", "shorted coils"] },
  "coil-value": { share: 5, origin: "part", words: ["coil of another resistance", "coils of another resistance"] },
  "resistor-value": { share: 1, origin: "part", words: ["resistor of another value", "resistors of another value"] },
  "cap-open": { share: 0.7, origin: "part", words: ["open capacitor", "open capacitors"] },
  "cap-shorted": { share: 0.5, origin: "part", words: ["shorted capacitor", "shorted capacitors"] },
  "cap-ten-times": {
    share: 0.7,
    origin: "miswired",
    words: ["capacitor ten times too large", "capacitors ten times too large"],
  },
  "cap-tenth": {
    share: 0.7,
    origin: "miswired",
    words: ["capacitor ten times too small", "capacitors ten times too small"],
  },
  "wrong-cap-value": {
    share: 3,
    origin: "miswired",
    words: ["capacitor of another usual value", "capacitors of another usual value"],
  },
  "cap-value": {
    share: 1,
    origin: "part",
    words: ["capacitor of an unusual value", "capacitors of an unusual value"],
  },
  "wrong-taper": { share: 2, origin: "miswired", words: ["pot of another taper", "pots of another taper"] },
  "contact-open": {
    share: 3,
    origin: "moving",
    words: ["switch contact that never closes", "switch contacts that never close"],
  },
  "switch-worn": { share: 4, origin: "moving", words: ["worn or oxidised switch", "worn or oxidised switches"] },
  "pot-scratchy": { share: 6, origin: "moving", words: ["scratchy pot", "scratchy pots"] },
  "pot-loose": { share: 2, origin: "moving", words: ["pot that turns in its hole", "pots that turn in their hole"] },
  "pot-wiper-worn": { share: 1.5, origin: "moving", words: ["wiper with resistance", "wipers with resistance"] },
  "pot-end-leaks": {
    share: 1.5,
    origin: "moving",
    words: ["pot that leaks at its end", "pots that leak at their end"],
  },
  "jack-spring": { share: 4, origin: "moving", words: ["weak jack spring", "weak jack springs"] },
  "cable-bad": { share: 5, origin: "moving", words: ["bad instrument lead", "bad instrument leads"] },
  "pickup-microphonic": { share: 2, origin: "part", words: ["pickup that howls", "pickups that howl"] },
  "known-resistor": {
    share: 3,
    origin: "told",
    words: ["known resistor of another value", "known resistors of another value"],
  },
  "positions-reversed": {
    share: 2,
    origin: "told",
    words: ["switch counted from its other end", "switches counted from their other end"],
  },
  "positions-swapped": {
    share: 2,
    origin: "told",
    words: ["exchange of two positions", "exchanges of two positions"],
  },
} as const satisfies Readonly<Record<string, FaultShare>>;

export type FaultKind = keyof typeof FAULT_SHARES;

/** How old the joints are: made just now and never proven, or of a guard that has worked before. */
export const JOINT_AGES = ["new", "old"] as const;
export type JointAge = (typeof JOINT_AGES)[number];

/**
 * How many times as often each origin is at fault as on a guard of which nothing is known (common practice, no source): what
 * worked before does not rewire itself, and what was soldered today has not worn.
 */
export const BY_AGE: Readonly<Record<JointAge, Readonly<Record<Origin, number>>>> = {
  new: { joint: 1.5, miswired: 1.5, part: 0.7, moving: 0.3, told: 1 },
  old: { joint: 0.5, miswired: 0.05, part: 1.5, moving: 2, told: 1 },
};

/** Half of the guards that somebody measures are sound, and few of those that somebody complains of. */
export const SOUND_SHARE = { measured: 0.5, complainedOf: 0.05 } as const;

/** Of the guards that have a fault, those that have a second one. */
export const SECOND_FAULT_SHARE = 0.15;

/** Of the guards that have a fault, those whose fault is none of these kinds, nor two of them. */
export const OUTSIDE_SHARE = 0.05;

/** What an answer says of where these numbers come from. */
export const PRIORS_SOURCE =
  "How common each kind of fault is, is common practice, no source: of a hundred faulty guards, how many have one of its kind, shared evenly by all places where it can be.";
