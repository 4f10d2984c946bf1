import type { Edit } from "../../src/bench/faults/edits/edit.ts";
import { editBuild } from "../../src/bench/faults/edits/edit-build.ts";
import { impedanceAt } from "../../src/bench/meter/impedance-readings.ts";
import { endRangeOf } from "../../src/build-file/end-resistance.ts";
import { partsOfKind } from "../../src/build-file/parts-of-kind.ts";
import type { Build, Coil, Part, Pickup, Pot } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import { coilTolerance, trackTolerance, valueTolerance } from "../../src/build-file/tolerances.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { type Random, seeded } from "../bench/faults/blind-trials.ts";

export { type Random, seeded };

export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const between = (low: number, high: number, random: Random) => low + (high - low) * random();
const within = (value: number, fraction: number, random: Random) => value * between(1 - fraction, 1 + fraction, random);

/** Sections a fifth off the drawing's, and one more that the drawing knows nothing of. */
function realLoss({ loss, inductance }: Coil, random: Random): Coil["loss"] {
  const drawn = loss === undefined ? [] : typeof loss === "number" ? [{ resistance: loss }] : loss;
  const moved = drawn.map((section) => ({
    resistance: within(section.resistance, 0.2, random),
    ...(section.inductance === undefined ? {} : { inductance: within(section.inductance, 0.15, random) }),
  }));
  const more = inductance * between(0.005, 0.03, random);
  const corner = 2 * Math.PI * 1000 * 12 ** random();
  return [...moved, { inductance: more, resistance: more * corner }];
}

function realCoil(coil: Coil, fraction: number, random: Random): Coil {
  return {
    ...coil,
    resistance: within(coil.resistance, fraction, random),
    inductance: within(coil.inductance, fraction, random),
    capacitance: within(coil.capacitance, 0.25, random) + between(0, 30e-12, random),
    loss: realLoss(coil, random),
  };
}

function realPickup(pickup: Pickup, random: Random): Pickup {
  const coils = Object.entries(pickup.coils).map(([name, coil]) => [
    name,
    realCoil(coil, coilTolerance(pickup, coil).fraction, random),
  ]);
  const coupling = pickup.coupling === undefined ? {} : { coupling: within(pickup.coupling, 0.15, random) };
  return { ...pickup, ...coupling, coils: Object.fromEntries(coils) };
}

const MIDPOINTS = { audio: [0.1, 0.22], linear: [0.45, 0.55], "reverse-audio": [0.78, 0.9] } as const;

function realTrack<Track extends Pot | NonNullable<Pot["gangs"]>[number]>(
  pot: Pot,
  track: Track,
  random: Random,
): Track {
  const { measured, ...rest } = track;
  const resistance = within(measured ?? track.resistance, trackTolerance(pot, measured).fraction, random);
  const midpoint =
    typeof track.taper === "string" && track.midpoint === undefined
      ? { midpoint: between(MIDPOINTS[track.taper][0], MIDPOINTS[track.taper][1], random) }
      : {};
  const range = endRangeOf(pot, track);
  const endResistance = range ? range.low * (range.high / range.low) ** random() : track.endResistance;
  return { ...rest, ...midpoint, resistance, endResistance } as Track;
}

function realPart(part: Part, random: Random): Part {
  switch (part.kind) {
    case "pickup":
      return realPickup(part, random);
    case "pot": {
      const own = realTrack(part, part, random);
      return part.gangs ? { ...own, gangs: part.gangs.map((gang) => realTrack(part, gang, random)) } : own;
    }
    case "cap":
      return { ...part, capacitance: within(part.capacitance, valueTolerance(part).fraction, random) };
    case "resistor":
      return { ...part, resistance: within(part.resistance, valueTolerance(part).fraction, random) };
    default:
      return part;
  }
}

/** A guard as somebody solders it of parts as they come, with something else than the drawing has where there are edits. */
export function soldered(build: Build, edits: readonly Edit[], random: Random): Build {
  // Another pot than drawn has ends of its own.
  const isPotValue = ({ edit }: Edit) => edit === "resistance";
  const bought = editBuild(build, edits.filter(isPotValue)).parts;
  const parts = Object.fromEntries(Object.entries(bought).map(([name, part]) => [name, realPart(part, random)]));
  const edited = editBuild(
    { ...build, parts },
    edits.filter((each) => !isPotValue(each)),
  );
  const [jack] = partsOfKind(build, "jack")[0]!;
  return {
    ...edited,
    parts: { ...edited.parts, stray: { kind: "cap", capacitance: between(20e-12, 90e-12, random) } },
    wires: [...edited.wires, { from: "stray.a", to: `${jack}.tip` }, { from: "stray.b", to: `${jack}.sleeve` }],
  };
}

/** What is read by: a resistor, an input, two channels. */
export interface Bench {
  readonly resistorOhms: number;
  readonly inputOhms: number;
  readonly inputFarads: number;
  readonly gain: number;
  /** Of a share, RMS of its real or imaginary part. */
  readonly noise: number;
}

export function benchOf(nominalOhms: number, random: Random): Bench {
  return {
    resistorOhms: within(nominalOhms, 0.01, random),
    inputOhms: within(1e6, 0.1, random),
    inputFarads: between(90e-12, 240e-12, random),
    gain: within(1, 0.02, random),
    noise: 1e-5 * 10 ** random(),
  };
}

interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A smooth error of the impedance's logarithm that no part makes, as wide as an octave or two. */
function bend(size: number, random: Random): (hz: number) => Complex {
  const waves = Array.from({ length: 3 }, () => ({
    re: size * normal(random),
    im: size * normal(random),
    at: between(0, 2 * Math.PI, random),
    turns: between(0.3, 1.2, random),
  }));
  return (hz) => {
    const octaves = Math.log2(hz / 1000);
    return waves.reduce(
      (sum, { re, im, at, turns }) => {
        const wave = Math.cos(at + turns * octaves) / Math.sqrt(1.5);
        return { re: sum.re + re * wave, im: sum.im + im * wave };
      },
      { re: 0, im: 0 },
    );
  };
}

/** A dial as a hand sets it. */
export function handSet({ dials, switches }: Settings, random: Random): Settings {
  const moved = Object.entries(dials).map(([name, dial]) => {
    return [name, dial === 0 || dial === 10 ? dial : Math.min(9.7, Math.max(0.3, dial + 0.25 * normal(random)))];
  });
  return { switches, dials: Object.fromEntries(moved) };
}

/** How far a real guard is from any circuit of its parts: RMS of the impedance's logarithm. */
const UNKNOWN_BEND = 0.006;

/** The share of the played voltage that stands at the jack, with a reader's errors. */
export function sharesOf(guard: Build, settings: Settings, frequenciesHz: Float64Array, bench: Bench, random: Random) {
  const circuit = new CircuitMaker(guard).circuitIn(handSet(settings, random), { withCableAndLoad: false });
  const impedances = impedanceAt(circuit, frequenciesHz);
  const off = bend(UNKNOWN_BEND, random);
  const { resistorOhms, inputOhms, inputFarads, gain, noise } = bench;
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  for (const [i, hz] of frequenciesHz.entries()) {
    const z = impedances[i];
    const error = off(hz);
    let [gRe, gIm] = [1 / inputOhms, 2 * Math.PI * hz * inputFarads];
    let isShort = false;
    if (z) {
      const [zRe, zIm] = [z.re * (1 + error.re) - z.im * error.im, z.im * (1 + error.re) + z.re * error.im];
      const norm = zRe * zRe + zIm * zIm;
      isShort = norm === 0;
      gRe += zRe / norm;
      gIm -= zIm / norm;
    }
    // t = 1 / (1 + R·Y)
    const [dRe, dIm] = [1 + resistorOhms * gRe, resistorOhms * gIm];
    const norm = dRe * dRe + dIm * dIm;
    re[i] = (isShort ? 0 : (gain * dRe) / norm) + noise * normal(random);
    im[i] = (isShort ? 0 : (-gain * dIm) / norm) + noise * normal(random);
  }
  return { re, im, sd: new Float64Array(frequenciesHz.length).fill(noise) };
}
