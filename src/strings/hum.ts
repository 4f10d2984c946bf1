/** How one coil takes up the room's alternating field: by its winding alone, whatever its magnet. */
export interface HumCoil {
  readonly humSign: 1 | -1;
  /** Sensitivity (turns × area); 1 is a reference single coil. */
  readonly turnsScale: number;
}

export interface RoomHum {
  readonly mainsHz: 50 | 60;
  readonly coils: readonly HumCoil[];
  readonly seconds: number;
  readonly sampleRateHz: number;
}

/** Amplitude of the mains fundamental in a reference coil: about 40 dB under its strum peak; common practice, no source. */
const FUNDAMENTAL_VOLTS = 0.002;
/** Harmonics 1, 2, 3, … re the fundamental. Transformers and dimmers favour odd ones, rectifiers even; common practice, no source. */
const HARMONICS = [1, 0.3, 0.5, 0.15, 0.3, 0.08, 0.2, 0.05, 0.12, 0.04, 0.08, 0.03, 0.06, 0.02, 0.04];

/**
 * The room's hum as each coil's EMF in volts. One field for all coils: equal coils wound opposite ways cancel to silence
 * in series or parallel. Deterministic, and starts from zero.
 */
export function roomHum({ mainsHz, coils, seconds, sampleRateHz }: RoomHum): Float32Array[] {
  const field = humField(mainsHz, Math.round(seconds * sampleRateHz), sampleRateHz);
  return coils.map(({ humSign, turnsScale }) => Float32Array.from(field, (volts) => humSign * turnsScale * volts));
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function humField(mainsHz: number, length: number, sampleRateHz: number): Float64Array {
  const field = new Float64Array(length);
  // After this many samples a whole number of cycles is over and the same values come again.
  const period = sampleRateHz / greatestCommonDivisor(sampleRateHz, mainsHz);
  const step = (2 * Math.PI * mainsHz) / sampleRateHz;
  const below = HARMONICS.filter((_, index) => (index + 1) * mainsHz < sampleRateHz / 2);
  for (let i = 0; i < Math.min(period, length); i += 1) {
    let sum = 0;
    for (let index = 0; index < below.length; index += 1) sum += below[index]! * Math.sin((index + 1) * step * i);
    field[i] = FUNDAMENTAL_VOLTS * sum;
  }
  for (let i = period; i < length; i += 1) field[i] = field[i - period]!;
  return field;
}
