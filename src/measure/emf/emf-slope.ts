import { faultAt } from "../../errors.ts";
import { pointsOf, sizeOf, type Uncertain } from "../impedance/uncertain.ts";
import type { Transfer } from "../recording/passes.ts";
import { gainsOf, type KnownCoil } from "./known-coil.ts";

/** A pickup's EMF over that of a coil without metal under the same exciter, 0 about 200 Hz; lists of equal length. */
export interface EmfSlope {
  readonly frequenciesHz: readonly number[];
  readonly nepers: readonly number[];
  /** Standard error by noise alone. */
  readonly noise: readonly number[];
  /** What the slope moves by where a coil's values are off by one standard deviation, a list for each direction. */
  readonly moves: readonly (readonly number[])[];
}

/** A coil's voltage as it was recorded. */
export interface HeardCoil extends KnownCoil {
  readonly heard: Transfer;
}

/** What the exciter gave: to a coil without metal, or as known from its circuit and an integrator behind the pickup. */
export type Reference =
  | (HeardCoil & { readonly kind: "coil" })
  | { readonly kind: "integrator"; readonly cornerHz: number; readonly exciterCornerHz: number };

const FROM_HZ = 80;
const TO_HZ = 14_000;
/** A point that noise may move by more tells nothing. */
const MOST_RELATIVE_ERROR = 0.1;
const LEAST_POINTS = 40;
/** Metal takes little below; where the treble is lost in noise, nothing is told of it. */
const REACH_HZ = 2500;
/** Where the slope is called 0. */
const LEVEL_HZ = [140, 280] as const;

const quotient = (a: number, b: number): number => Math.log(Math.hypot(1, a / b));

/** What a coil without metal would show: EMF ∝ jω·current, current ∝ 1/(1 + jf/f_exciter), heard through 1/(1 + jf/f_corner). */
const integratedGain = (hz: number, cornerHz: number, exciterCornerHz: number) =>
  Math.log(hz) - quotient(hz, cornerHz) - quotient(hz, exciterCornerHz);

const isClear = (point: Uncertain) => point.sd < MOST_RELATIVE_ERROR * sizeOf(point);

interface Told {
  readonly hz: number;
  readonly heard: number;
  readonly noise: number;
}

/** Where both recordings stand above noise: the logarithm of their quotient. */
function toldBy(pickup: Transfer, reference: Transfer | undefined): Told[] {
  const [above, below] = [pointsOf(pickup), reference && pointsOf(reference)];
  return above.flatMap((each, i): Told[] => {
    const hz = pickup.frequenciesHz[i]!;
    const other = below?.[i];
    if (hz < FROM_HZ || hz > TO_HZ || !isClear(each) || (other && !isClear(other))) return [];
    const heard = Math.log(sizeOf(each)) - (other ? Math.log(sizeOf(other)) : 0);
    const noise = Math.hypot(each.sd / sizeOf(each), other ? other.sd / sizeOf(other) : 0);
    return [{ hz, heard, noise }];
  });
}

/** @throws DATA_INSUFFICIENT where too little stands above the noise to tell a slope */
function requireTold(told: readonly Told[], level: readonly Told[]): void {
  const highest = told.reduce((most, { hz }) => Math.max(most, hz), 0);
  if (told.length >= LEAST_POINTS && highest >= REACH_HZ && level.length > 0) return;
  const message =
    `${told.length} of its frequencies stand above the noise, ${level.length} of them about 200 Hz and the highest at ${Math.round(highest)} Hz;` +
    ` expected at least ${LEAST_POINTS}, some about 200 Hz and some above ${REACH_HZ} Hz. Bring the exciter nearer, or turn the output up`;
  throw faultAt("DATA_INSUFFICIENT", "unloaded", message);
}

/**
 * E = V·(1 + Z·Y), with Z the branch that carries a coil's EMF and Y the winding's capacitance with what hangs across; over the same of
 * the reference, in which the exciter cancels.
 * @throws DATA_INSUFFICIENT where too little stands above the noise
 */
export function emfSlope(pickup: HeardCoil, reference: Reference): EmfSlope {
  const told = toldBy(pickup.heard, reference.kind === "coil" ? reference.heard : undefined);
  const about = told.filter(({ hz }) => hz >= LEVEL_HZ[0] && hz <= LEVEL_HZ[1]);
  requireTold(told, about);
  const frequenciesHz = told.map(({ hz }) => hz);
  const own = gainsOf(pickup, frequenciesHz);
  const other =
    reference.kind === "coil"
      ? gainsOf(reference, frequenciesHz)
      : {
          own: frequenciesHz.map((hz) => -integratedGain(hz, reference.cornerHz, reference.exciterCornerHz)),
          moves: [],
        };
  const level = new Set(about);
  const fromLevel = (values: readonly number[]) => {
    const zero = told.reduce((sum, each, i) => (level.has(each) ? sum + values[i]! : sum), 0) / level.size;
    return values.map((value) => value - zero);
  };
  return {
    frequenciesHz,
    nepers: fromLevel(told.map(({ heard }, i) => heard - own.own[i]! + other.own[i]!)),
    noise: told.map(({ noise }) => noise),
    moves: [...own.moves, ...other.moves].map(fromLevel),
  };
}

/** Standard error of each point with what the coils' values leave open, in nepers. */
export function wholeErrors({ noise, moves }: EmfSlope): number[] {
  return noise.map((each, i) => Math.hypot(each, ...moves.map((move) => move[i]!)));
}
