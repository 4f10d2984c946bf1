/** Volts RMS from 20 Hz to 20 kHz, as they are and A-weighted. */
export interface Level {
  readonly flat: number;
  readonly weighted: number;
}

/** A part of a sound: its power in V², and the gain that A-weighting gives its frequency. */
interface Portion {
  readonly power: number;
  readonly weight: number;
}

export function levelOf(portions: readonly Portion[]): Level {
  let [flat, weighted] = [0, 0];
  for (const { power, weight } of portions) {
    flat += power;
    weighted += power * weight ** 2;
  }
  return { flat: Math.sqrt(flat), weighted: Math.sqrt(weighted) };
}

/** Of sounds that have nothing to do with each other. */
export function togetherByPower(levels: readonly Level[]): Level {
  return {
    flat: Math.hypot(...levels.map(({ flat }) => flat)),
    weighted: Math.hypot(...levels.map(({ weighted }) => weighted)),
  };
}
