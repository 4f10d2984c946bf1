import { Controls } from "../../build-file/settings.ts";
import type { CircuitMaker } from "../../response/circuit.ts";
import { networkSize } from "../solving-effort.ts";
import { countStates } from "./states.ts";

/** How far an audit goes, by the size of the build. */
export interface Effort {
  readonly maxStates: number;
  /** Whether every pot is tried in every state. */
  readonly triesControls: boolean;
  /** How many wires may be taken away in search of a short. */
  readonly maxTrials: number;
  /** Whether the network is so large that solving it outright beats reducing it to polynomials. */
  readonly solvesOutright: boolean;
  /** Whether anything is left out. */
  readonly isLimited: boolean;
}

/** Five positions × three push-pulls and a two-way switch are 80; more combinations than these say nothing new. */
const MAX_STATES = 96;
const MAX_TRIALS = 400;
/** Multiplications of LU factoring, about a second's worth; a customary guard needs a hundredth of them. */
const BUDGET = 3e8;
/** Three dials at some five frequencies for every pot. */
const SOLUTIONS_PER_POT = 15;
const LARGE_NETWORK = 48;

/** Sizes an audit so that it answers in about a second whatever the build. */
export function effortFor(maker: CircuitMaker): Effort {
  const controls = new Controls(maker.build);
  const size = networkSize(maker);
  const solution = size ** 3;
  const perState = solution * SOLUTIONS_PER_POT * (1 + controls.pots.length);
  const triesControls = perState <= BUDGET / 4;
  const affordable = Math.floor(BUDGET / (triesControls ? perState : solution * SOLUTIONS_PER_POT));
  const maxStates = Math.min(MAX_STATES, Math.max(1, affordable));
  return {
    maxStates,
    triesControls,
    maxTrials: Math.min(MAX_TRIALS, Math.floor(BUDGET / (2 * solution))),
    solvesOutright: size > LARGE_NETWORK,
    isLimited: !triesControls || countStates(controls) > maxStates,
  };
}
