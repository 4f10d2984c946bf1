import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { powerDecibels, powerFromDecibels } from "../../decibels.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { humWeights, MAINS_HZ } from "../../response/hum.ts";
import { solvedTransfers } from "../../response/transfers.ts";

/** How a guard sounds in one setting, roughly: levels in dB re one reference coil. */
export interface Loudness {
  readonly lows: number;
  readonly mids: number;
  readonly highs: number;
  readonly hum: number;
}

/**
 * How far two pickups' signals go together at a frequency: wholly at the fundamentals, hardly where the wavelength on the
 * string is short beside their distance. A rough model, from memory: it decides only whether a sum sounds thin.
 */
const BANDS: readonly { readonly hz: number; readonly together: number }[] = [
  { hz: MAINS_HZ, together: 1 },
  { hz: 100, together: 1 },
  { hz: 200, together: 0.9 },
  { hz: 1000, together: 0.5 },
  { hz: 3000, together: 0.2 },
  { hz: 5000, together: 0.1 },
];
const FREQUENCIES = Float64Array.from(BANDS, ({ hz }) => hz);
/** Nothing is heard below this, in dB; deeper silences are all the same. */
const FLOOR_DB = -120;

function heardDecibels(power: number): number {
  return Math.max(FLOOR_DB, powerDecibels(power));
}

function powerAt(spectra: readonly Spectrum[], weights: readonly number[], index: number, together: number): number {
  let [re, im, apart] = [0, 0, 0];
  for (const [source, spectrum] of spectra.entries()) {
    const a = weights[source]! * spectrum.re[index]!;
    const b = weights[source]! * spectrum.im[index]!;
    re += a;
    im += b;
    apart += a * a + b * b;
  }
  return together * (re * re + im * im) + (1 - together) * apart;
}

/** Listens to one build in one setting after another. */
export class Listener {
  readonly #maker: CircuitMaker;
  readonly #heard = new Map<Settings, Loudness>();

  constructor(build: Build) {
    this.#maker = new CircuitMaker(build);
  }

  in(settings: Settings): Loudness {
    const known = this.#heard.get(settings);
    if (known) return known;
    const { sources } = this.#maker;
    const spectra = solvedTransfers(this.#maker.circuitIn(settings), sources).perSource(FREQUENCIES);
    const emfs = sources.map(({ emf }) => emf);
    const hums = humWeights(sources);
    const power = BANDS.map(({ together }, index) => powerAt(spectra, index === 0 ? hums : emfs, index, together));
    const loudness = {
      hum: heardDecibels(power[0]!),
      lows: heardDecibels((power[1]! + power[2]!) / 2),
      mids: heardDecibels(power[3]!),
      highs: heardDecibels((power[4]! + power[5]!) / 2),
    };
    this.#heard.set(settings, loudness);
    return loudness;
  }
}

/** All bands together, in dB. */
export function overall({ lows, mids, highs }: Loudness): number {
  return heardDecibels([lows, mids, highs].reduce((sum, level) => sum + powerFromDecibels(level), 0) / 3);
}
