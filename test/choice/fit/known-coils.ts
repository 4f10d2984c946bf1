import { type Across, coilImpedance, coilTransfer } from "../../../src/choice/fit/coil-model.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";

/** Coils of usual size, with the loss model that describes each. */
export const KNOWN_COILS: Readonly<
  Record<string, { coil: CoilValues; loss: "resistor" | "one-section" | "two-sections" }>
> = {
  "single coil": { coil: { resistance: 6000, inductance: 2.4, capacitance: 110e-12, loss: 1.2e6 }, loss: "resistor" },
  "hot single coil": {
    coil: { resistance: 12_500, inductance: 6.2, capacitance: 140e-12, loss: 900e3 },
    loss: "resistor",
  },
  "wide single coil": {
    coil: {
      resistance: 8200,
      inductance: 6.5,
      capacitance: 120e-12,
      loss: [{ resistance: 30e3, inductance: 0.8 }],
    },
    loss: "one-section",
  },
  "humbucker with two loss sections": {
    coil: {
      resistance: 8000,
      inductance: 3.2,
      capacitance: 130e-12,
      loss: [
        { resistance: 2500, inductance: 0.4 },
        { resistance: 40e3, inductance: 0.8 },
      ],
    },
    loss: "two-sections",
  },
};

export const SWEEP_HZ: readonly number[] = [...logSpaced(20, 20_000, 60)];

/** Normal deviates from a seed (Box and Muller). */
export function createNormal(seed: number): () => number {
  const uniform = createUniform(seed);
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** An impedance table with noise of this relative standard deviation on magnitude and phase (radians). */
export function noisyImpedance(coil: CoilValues, noise: number, normal: () => number) {
  const exact = SWEEP_HZ.map((hertz) => coilImpedance(coil, hertz));
  return {
    frequenciesHz: SWEEP_HZ,
    ohms: exact.map(({ re, im }) => Math.hypot(re, im) * Math.exp(noise * normal())),
    degrees: exact.map(({ re, im }) => ((Math.atan2(im, re) + noise * normal()) * 180) / Math.PI),
  };
}

/** A response in dB through a load, with noise and an arbitrary level. */
export function noisyResponse(coil: CoilValues, load: Across, noiseDb: number, normal: () => number) {
  const levelsDb = SWEEP_HZ.map((hertz) => {
    const { re, im } = coilTransfer(coil, hertz, load);
    return 20 * Math.log10(Math.hypot(re, im)) - 17 + noiseDb * normal();
  });
  return { frequenciesHz: SWEEP_HZ, levelsDb };
}

/** A coil's voltage unloaded over loaded, with noise on level and angle (radians) and a gain that was touched. */
export function noisyRatio(
  coil: CoilValues,
  how: {
    readonly load: Across;
    readonly across: Across;
    readonly noise: number;
    readonly offsetDb: number;
    readonly normal: () => number;
  },
) {
  const { load, across, noise, offsetDb, normal } = how;
  const exact = SWEEP_HZ.map((hertz) => {
    // The voltage unloaded is the EMF over 1 + Z·Y of what hangs there anyhow; loaded, of that and the load.
    const both = {
      resistance: 1 / (1 / across.resistance + 1 / load.resistance),
      capacitance: across.capacitance + load.capacitance,
    };
    const [free, loaded] = [coilTransfer(coil, hertz, across), coilTransfer(coil, hertz, both)];
    const norm = loaded.re ** 2 + loaded.im ** 2;
    return {
      re: (free.re * loaded.re + free.im * loaded.im) / norm,
      im: (free.im * loaded.re - free.re * loaded.im) / norm,
    };
  });
  return {
    load,
    frequenciesHz: SWEEP_HZ,
    levelsDb: exact.map(({ re, im }) => 20 * Math.log10(Math.hypot(re, im) * Math.exp(noise * normal())) + offsetDb),
    degrees: exact.map(({ re, im }) => ((Math.atan2(im, re) + noise * normal()) * 180) / Math.PI),
  };
}

/** The values of a coil under the names that fits give them. */
export function namedValues(coil: CoilValues): Record<string, number> {
  const { resistance, inductance, capacitance, loss } = coil;
  const sections = Array.isArray(loss)
    ? loss.flatMap((section, i): [string, number][] => [
        [`loss.${i}.resistance`, section.resistance],
        ...(section.inductance === undefined
          ? []
          : [[`loss.${i}.inductance`, section.inductance] satisfies [string, number]]),
      ])
    : [];
  return {
    resistance,
    inductance,
    capacitance,
    ...(typeof loss === "number" ? { loss } : {}),
    ...Object.fromEntries(sections),
  };
}
