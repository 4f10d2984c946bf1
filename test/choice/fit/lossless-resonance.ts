import type { Across } from "../../../src/choice/fit/coil-model.ts";
import type { PeakOf } from "../../../src/choice/fit/resonance-peak.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";

/**
 * The frequency of the maximum of |Z| or of |V| of a coil without core loss: with A = 1 + R·G, B = R·C + L·G and x = ω²,
 * |V|⁻² = (A − LCx)² + B²x and |Z|² = (R² + L²x)·|V|², whose derivatives vanish at the roots below.
 */
export function resonanceHz(
  coil: CoilValues,
  extraFarads: number,
  setup: { readonly peakOf: PeakOf; readonly across: Across },
): number {
  const { resistance: r, inductance: l } = coil;
  const c = coil.capacitance + extraFarads + setup.across.capacitance;
  const g = Number.isFinite(setup.across.resistance) ? 1 / setup.across.resistance : 0;
  const a = 1 + r * g;
  const b = r * c + l * g;
  const x =
    setup.peakOf === "response"
      ? a / (l * c) - b ** 2 / (2 * l ** 2 * c ** 2)
      : (Math.sqrt((r * c) ** 4 / l ** 4 + (c / l) ** 2 * (a ** 2 + (r / l) ** 2 * (2 * l * c * a - b ** 2))) -
          (r * c) ** 2 / l ** 2) /
        c ** 2;
  return Math.sqrt(Math.max(x, Number.MIN_VALUE)) / (2 * Math.PI);
}
