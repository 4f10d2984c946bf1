import type { Across } from "../../src/choice/fit/coil-model.ts";
import type { CoilValues } from "../../src/response/coil-ladder.ts";
import { admittance, type Complex, over, times } from "./simulated-pickup.ts";

/** A coil on alnico rods, R + L with a resistor across, of the kind that was measured (open data set strayr/pickupAnalyseR-data). */
export const ROD_COIL = { resistance: 6600, inductance: 2.61, capacitance: 130e-12, loss: 700e3 };

/** One metal about a coil as a factor, from the words of the build file: 3 dB less at a pole, half the depth less at a shelf. */
export const pole =
  (poleHz: number) =>
  (hz: number): Complex =>
    over([1, 0], [1, hz / poleHz]);
export const shelf =
  (shelfHz: number, depth: number) =>
  (hz: number): Complex => {
    const apart = 10 ** (depth / 40);
    return over([1, hz / (shelfHz * apart)], [1, (hz * apart) / shelfHz]);
  };
export const bare = (): Complex => [1, 0];

/** An exciter's EMF, in proportion to its frequency and to a current with a pole. */
export const exciterAt =
  (poleHz: number) =>
  (hz: number): Complex =>
    over([0, hz / 2000], [1, hz / poleHz]);

const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];

function branch({ resistance, inductance, loss }: CoilValues, omega: number): Complex {
  const henries: Complex = [0, omega * inductance];
  if (typeof loss === "number") return plus([resistance, 0], over(times(henries, [loss, 0]), plus(henries, [loss, 0])));
  return (loss ?? []).reduce<Complex>(
    (sum, section) => {
      const inner: Complex = [0, omega * section.inductance!];
      return plus(sum, over(times(inner, [section.resistance, 0]), plus(inner, [section.resistance, 0])));
    },
    plus([resistance, 0], henries),
  );
}

/** What a coil gives of an EMF into what hangs across it: a ladder and its load as a divider, apart from the code under test. */
export const heardFrom =
  (coil: CoilValues, emf: (hz: number) => Complex, ...across: Across[]) =>
  (hz: number): Complex => {
    const omega = 2 * Math.PI * Math.max(hz, 1);
    const y = across.reduce<Complex>(
      (sum, each) => plus(sum, admittance(each, Math.max(hz, 1))),
      [0, omega * coil.capacitance],
    );
    return over(emf(hz), plus([1, 0], times(branch(coil, omega), y)));
  };

export const product =
  (...factors: ((hz: number) => Complex)[]) =>
  (hz: number): Complex =>
    factors.reduce<Complex>((all, factor) => times(all, factor(hz)), [1, 0]);
