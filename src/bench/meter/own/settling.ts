import { LugTable } from "../../../build-file/lugs.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { Network } from "../../../network/elements.ts";
import { assemblePencil, REFERENCE_OHMS } from "../../../network/pencil.ts";
import { StepResponse } from "../../../network/step-response.ts";
import { CircuitMaker } from "../../../response/circuit.ts";
import { BUDGET } from "../../solving-effort.ts";
import type { ReadingPlan } from "../reading-plan.ts";
import { endOf } from "./meter-error.ts";
import type { OwnMeter } from "./own-meter.ts";
import { sourceOhms } from "./range-for.ts";

/** How a reading comes to rest. */
export interface Settling {
  /** From touching on until the reading stays within a half per cent of what it ends at, or over the range. */
  readonly seconds: number;
  /** How far a needle jumps beyond where it comes to rest, as a share of its arc. */
  readonly kick: number;
}

const NEAR = 0.005;
const FIRST_STEP_SECONDS = 5e-3;
/** Each step is so much longer than the one before. */
const GROWTH = 1.12;
/** So many steps on end must be near: a reading that rings passes by. */
const STEADY_STEPS = 3;
/** How long a needle swings: what flows for less moves it in proportion only (common practice: a third of a second). */
const NEEDLE_SECONDS = 0.3;
/** Nobody holds probes to a guard for longer. */
const LONGEST_SECONDS = 60;

/** The guard with the meter between two of its nodes, as the last source. */
function withMeter(network: Network, a: number, b: number, ohms: number): Network {
  const source = network.sourceCount;
  return {
    ...network,
    elements: [...network.elements, { kind: "branch", a, b, ohms, henries: 0, source }],
    sourceCount: source + 1,
  };
}

/** Lets a meter settle on the readings of one build, as many of them as can be afforded. */
export class Settler {
  readonly #maker: CircuitMaker;
  readonly #lugs: LugTable;
  readonly #meter: OwnMeter;
  /** A quarter of a second is enough: usual guards take a tenth of it. */
  #left = BUDGET / 4;

  constructor(build: Build, meter: OwnMeter) {
    this.#maker = new CircuitMaker(build);
    this.#lugs = new LugTable(build.parts);
    this.#meter = meter;
  }

  /** Undefined where nothing is to be waited for, or where it cannot be worked out. */
  settle({ settings, between, sweep }: ReadingPlan, ohms: number | null, range: number): Settling | undefined {
    if (sweep !== undefined || this.#left <= 0) return undefined;
    const { network, nodeOfLug } = this.#maker.circuitIn(settings, { withCableAndLoad: false });
    const [a, b] = between.map((lug) => nodeOfLug(this.#lugs.indexOf(lug))) as [number, number];
    if (a === b) return undefined;
    const source = sourceOhms(this.#meter, range);
    const pencil = assemblePencil(withMeter(network, a, b, source));
    // Real elimination in a complex solver, twice the multiplications of one at rest.
    const eachStep = (4 * pencil.size ** 3) / 3;
    const response = new StepResponse(pencil, network.sourceCount);
    const end = response.end();
    if (end === undefined) return undefined;
    const seen = (current: number) => Math.max(0, REFERENCE_OHMS / Math.abs(current) - source);
    const isNear = this.#nearness(ohms === null ? null : seen(end.current));
    let [seconds, step, near, since] = [0, FIRST_STEP_SECONDS, 0, 0];
    for (; near < STEADY_STEPS && seconds < LONGEST_SECONDS; step *= GROWTH) {
      this.#left -= eachStep;
      if (this.#left < 0 || !response.advance(step)) return undefined;
      seconds += step;
      if (!isNear(seen(response.current))) near = 0;
      else if (near++ === 0) since = seconds;
    }
    const jump = Math.abs(end.charge) / REFERENCE_OHMS;
    return { seconds: near > 0 ? since : seconds, kick: (jump * source) / NEEDLE_SECONDS };
  }

  /** @param rest the ohms that it comes to, null where open */
  #nearness(rest: number | null): (ohms: number) => boolean {
    const over = endOf(this.#meter);
    if (rest === null || rest >= over) return (ohms) => ohms >= over;
    return (ohms) => Math.abs(ohms - rest) <= NEAR * rest + 1;
  }
}
