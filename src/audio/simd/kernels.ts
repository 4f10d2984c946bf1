import {
  type Code,
  get,
  integer,
  load,
  loadFloat,
  loadFloatInto,
  loop,
  pick,
  set,
  simd,
  store,
  storeFloat,
  type WasmFunction,
} from "./assembler.ts";

/** Addresses in the module's memory. */
export const STATE = 0;
export const SAMPLES = 1024;
/** Samples worked on at once: with their results they fit one page, and nearly the first-level cache. */
export const CHUNK = 8192;
/** A vector beyond the samples, for the one after them. */
export const RESULTS = SAMPLES + 4 * CHUNK + 16;
export const LANES = 4;
/** Samples of each lane worked on at once. */
export const LANE_CHUNK = CHUNK / LANES;
/** Samples that share one peak. */
export const SECTION = 32;

const f32 = {
  lane0: (a: Code): Code => [...simd(0x1f, a), 0],
  abs: (a: Code) => simd(0xe0, a),
  larger: (a: Code, b: Code) => simd(0xeb, a, b),
  add: (a: Code, b: Code) => simd(0xe4, a, b),
  subtract: (a: Code, b: Code) => simd(0xe5, a, b),
  multiply: (a: Code, b: Code) => simd(0xe6, a, b),
  nearest: (a: Code) => simd(0x6a, a),
  fromIntegers: (a: Code) => simd(0xfa, a),
};
const i32 = {
  add: (a: Code, b: Code) => simd(0xae, a, b),
  multiply: (a: Code, b: Code) => simd(0xb5, a, b),
  /** Those out of range at its ends, NaN as 0. */
  fromFloats: (a: Code) => simd(0xf8, a),
  /** Two vectors as one of 16-bit integers, those out of range at its ends. */
  narrow: (a: Code, b: Code) => simd(0x85, a, b),
};
const f64 = {
  add: (a: Code, b: Code) => simd(0xf0, a, b),
  subtract: (a: Code, b: Code) => simd(0xf1, a, b),
  multiply: (a: Code, b: Code) => simd(0xf2, a, b),
  fromFloats: (a: Code) => simd(0x5f, a),
};

/**
 * The largest magnitude of every SECTION samples from `from` to `end`, written from `to` on, and from `bends` on their largest
 * |x[n−1] − 2x[n] + x[n+1]|, the samples before and after included.
 */
function sectionPeaks(): WasmFunction {
  const [from, end, to, bends, before, largest, sharpest] = [0, 1, 2, 3, 4, 5, 6];
  const offsets = Array.from({ length: SECTION / 4 }, (_, k) => 16 * k);
  const step = (offset: number) => f32.subtract(load(get(from), offset + 4), load(get(from), offset));
  const bend = (offset: number) => f32.abs(f32.subtract(step(offset), loadBefore(offset)));
  const loadBefore = (offset: number) => f32.subtract(load(get(from), offset), load(get(before), offset));
  const overall = (lanes: number) => [
    set(lanes, f32.larger(get(lanes), pick(get(lanes), get(lanes), [2, 3, 0, 1]))),
    set(lanes, f32.larger(get(lanes), pick(get(lanes), get(lanes), [1, 0, 3, 2]))),
  ];
  const advance = (address: number) => set(address, [...get(address), ...integer(4), 0x6a]);
  const body = loop(from, 4 * SECTION, get(end), [
    set(before, [...get(from), ...integer(-4), 0x6a]),
    set(
      largest,
      offsets.map((offset) => f32.abs(load(get(from), offset))).reduce((a, b) => f32.larger(a, b)),
    ),
    set(
      sharpest,
      offsets.map(bend).reduce((a, b) => f32.larger(a, b)),
    ),
    ...overall(largest),
    ...overall(sharpest),
    storeFloat(get(to), f32.lane0(get(largest))),
    storeFloat(get(bends), f32.lane0(get(sharpest))),
    advance(to),
    advance(bends),
  ]);
  const parameters = ["i32", "i32", "i32", "i32"] as const;
  return { name: "sectionPeaks", parameters, locals: ["i32", "v128", "v128"], body };
}

/** Vectors that `dithered` reads and leaves for its next call; floats where not said otherwise. */
export const DITHER = {
  /** The generator's next eight states, in two vectors. */
  states: STATE,
  /** The last four numbers of the flat stream. */
  before: STATE + 32,
  /** Zeros, as long as every sample is finite. */
  check: STATE + 48,
  /** What takes each state eight steps on, integers too. */
  multiplier: STATE + 64,
  increment: STATE + 80,
  scale: STATE + 96,
  numberScale: STATE + 112,
  zero: STATE + 128,
} as const;

/** The samples from `from` to `end`, eight at a time, times `scale` and dithered, as 16-bit integers from `to` on. */
function dithered(): WasmFunction {
  const [from, end, to, earlier, later, before, check, number, x, first, second] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  const kept = (address: number) => load(integer(address));
  const four = (offset: number, states: number, result: number) => [
    set(number, f32.multiply(f32.fromIntegers(get(states)), kept(DITHER.numberScale))),
    set(states, i32.add(i32.multiply(get(states), kept(DITHER.multiplier)), kept(DITHER.increment))),
    set(x, load(get(from), offset)),
    set(check, f32.add(get(check), f32.multiply(get(x), kept(DITHER.zero)))),
    set(x, f32.multiply(get(x), kept(DITHER.scale))),
    set(x, f32.add(get(x), f32.subtract(get(number), pick(get(before), get(number), [3, 4, 5, 6])))),
    set(before, get(number)),
    set(result, i32.fromFloats(f32.nearest(get(x)))),
  ];
  const body = [
    ...set(earlier, kept(DITHER.states)),
    ...set(later, kept(DITHER.states + 16)),
    ...set(before, kept(DITHER.before)),
    ...set(check, kept(DITHER.check)),
    ...loop(from, 32, get(end), [
      ...four(0, earlier, first),
      ...four(16, later, second),
      store(get(to), i32.narrow(get(first), get(second))),
      set(to, [...get(to), ...integer(16), 0x6a]),
    ]),
    ...store(integer(DITHER.states), get(earlier)),
    ...store(integer(DITHER.states + 16), get(later)),
    ...store(integer(DITHER.before), get(before)),
    ...store(integer(DITHER.check), get(check)),
  ];
  return { name: "dithered", parameters: ["i32", "i32", "i32"], locals: Array(8).fill("v128"), body };
}

/** Pairs of doubles that `weightedEnergies` reads, and `memory` and `energies` that it leaves for its next call. */
export const WEIGHTING = {
  /** b0, b1, b2, a1, a2 of the shelf, which has taken on the high-pass's gain, and a1, a2 of the high-pass. */
  coefficients: STATE + 256,
  /** Two states of each section, for lanes 0 and 1, then for 2 and 3. */
  memory: STATE + 384,
  energies: STATE + 512,
} as const;

/** Adds the K-weighted energy of four lanes side by side, each LANE_CHUNK samples from the one before. */
function weightedEnergies(): WasmFunction {
  const [from, end, x, shelved, y] = [0, 1, 2, 3, 4];
  const [b0, b1, b2, a1, a2, c1, c2] = [5, 6, 7, 8, 9, 10, 11].map(get) as [Code, Code, Code, Code, Code, Code, Code];
  const [firstCoefficient, firstState, firstEnergy] = [5, 12, 20];
  const laneOffset = (lane: number) => 4 * LANE_CHUNK * lane;
  const pair = (index: number) => {
    const [s1, s2, h1, h2] = [0, 1, 2, 3].map((state) => firstState + 4 * index + state) as [
      number,
      number,
      number,
      number,
    ];
    const energy = firstEnergy + index;
    const two = loadFloatInto(1, get(from), laneOffset(2 * index + 1), loadFloat(get(from), laneOffset(2 * index)));
    // Transposed direct form II. The high-pass has the zeros 1, −2, 1, so only its feedback multiplies.
    return [
      set(x, f64.fromFloats(two)),
      set(shelved, f64.add(f64.multiply(b0, get(x)), get(s1))),
      set(s1, f64.subtract(f64.add(f64.multiply(b1, get(x)), get(s2)), f64.multiply(a1, get(shelved)))),
      set(s2, f64.subtract(f64.multiply(b2, get(x)), f64.multiply(a2, get(shelved)))),
      set(y, f64.add(get(shelved), get(h1))),
      set(h1, f64.subtract(f64.subtract(get(h2), f64.add(get(shelved), get(shelved))), f64.multiply(c1, get(y)))),
      set(h2, f64.subtract(get(shelved), f64.multiply(c2, get(y)))),
      set(energy, f64.add(get(energy), f64.multiply(get(y), get(y)))),
    ];
  };
  const all = (first: number, count: number, address: number) =>
    Array.from({ length: count }, (_, k) => ({ local: first + k, address: integer(address + 16 * k) }));
  const kept = [...all(firstState, 8, WEIGHTING.memory), ...all(firstEnergy, 2, WEIGHTING.energies)];
  const read = [...all(firstCoefficient, 7, WEIGHTING.coefficients), ...kept];
  const body = [
    ...read.flatMap(({ local, address }) => set(local, load(address))),
    ...loop(from, 4, get(end), [...pair(0), ...pair(1)]),
    ...kept.flatMap(({ local, address }) => store(address, get(local))),
  ];
  return { name: "weightedEnergies", parameters: ["i32", "i32"], locals: Array(20).fill("v128"), body };
}

export const KERNELS: readonly WasmFunction[] = [sectionPeaks(), dithered(), weightedEnergies()];
