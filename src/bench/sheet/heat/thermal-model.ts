/** A body that takes up heat, joules a kelvin, and how well it gives it to the air, kelvin a watt. */
export interface ThermalNode {
  readonly capacity: number;
  /** Infinity for none. */
  readonly toAir: number;
  /** Held against a source of this temperature through so many kelvin a watt: an iron's heater. */
  readonly source?: { readonly celsius: number; readonly resistance: number };
  readonly startCelsius: number;
}

/** Heat between two nodes, kelvin a watt. */
export interface ThermalLink {
  readonly from: number;
  readonly to: number;
  readonly resistance: number;
}

export interface ThermalNetwork {
  readonly nodes: readonly ThermalNode[];
  readonly links: readonly ThermalLink[];
  readonly airCelsius: number;
}

/** The quickest body here, a lug, takes half a second: a step is small against that, and the error is by its fourth power. */
const STEP_SECONDS = 0.02;

function ratesInto(network: ThermalNetwork, celsius: Float64Array, rates: Float64Array): void {
  const { nodes, links, airCelsius } = network;
  for (const [index, { toAir, source }] of nodes.entries()) {
    const fromSource = source ? (source.celsius - celsius[index]!) / source.resistance : 0;
    rates[index] = fromSource - (celsius[index]! - airCelsius) / toAir;
  }
  for (const { from, to, resistance } of links) {
    const watts = (celsius[from]! - celsius[to]!) / resistance;
    rates[from]! -= watts;
    rates[to]! += watts;
  }
  for (const [index, { capacity }] of nodes.entries()) rates[index]! /= capacity;
}

/**
 * The nodes' temperatures over time, by the classical fourth-order Runge–Kutta method on C·dT/dt = Σ (T' − T)/R.
 * @param isOver is asked after every step with the seconds so far and °C of all nodes
 * @returns °C of all nodes when it was over, or after `seconds`
 */
export function heatFor(
  network: ThermalNetwork,
  seconds: number,
  isOver: (seconds: number, celsius: Float64Array) => boolean = () => false,
): Float64Array {
  const size = network.nodes.length;
  const celsius = Float64Array.from(network.nodes, ({ startCelsius }) => startCelsius);
  const k = Array.from({ length: 4 }, () => new Float64Array(size));
  const probe = new Float64Array(size);
  const steps = Math.round(seconds / STEP_SECONDS);
  for (let step = 1; step <= steps; step++) {
    ratesInto(network, celsius, k[0]!);
    for (const [stage, share] of [0.5, 0.5, 1].entries()) {
      for (let node = 0; node < size; node++) probe[node] = celsius[node]! + share * STEP_SECONDS * k[stage]![node]!;
      ratesInto(network, probe, k[stage + 1]!);
    }
    for (let node = 0; node < size; node++) {
      const sum = k[0]![node]! + 2 * k[1]![node]! + 2 * k[2]![node]! + k[3]![node]!;
      celsius[node]! += (STEP_SECONDS / 6) * sum;
    }
    if (isOver(step * STEP_SECONDS, celsius)) break;
  }
  return celsius;
}
