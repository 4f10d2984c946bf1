import { USUAL_TAPER } from "../../filter/band-taper.ts";
import { DRIVE_DELAY_SAMPLES } from "./delay.ts";
import { EIGHTFOLD_DELAY } from "./eightfold.ts";
import { windowedSinc } from "./low-pass.ts";

/** Passes what filters at usual rates pass, 0.82 of the Nyquist frequency, and is 100 dB down at the whole: Kaiser's estimate is 143 taps. */
const CUTOFF = (1 + USUAL_TAPER.exactBand) / 2 / 2;
const UP_CENTRE = 72;

/** What is left of the delay for the last filter, at twice the rate; a fraction, for it makes up for the others'. */
const DOWN_CENTRE = 2 * DRIVE_DELAY_SAMPLES - UP_CENTRE - EIGHTFOLD_DELAY;

type Phases = readonly [even: Float64Array, odd: Float64Array];

function phasesOf(taps: Float64Array): Phases {
  return [taps.filter((_, n) => n % 2 === 0), taps.filter((_, n) => n % 2 === 1)];
}

/** To twice the rate: the even and the odd new samples come of a filter each. */
export const EDGE_UP: Phases = phasesOf(windowedSinc(2 * UP_CENTRE + 2, CUTOFF, UP_CENTRE).map((tap) => 2 * tap));

/**
 * The clipper takes a quiet sound's mean of two samples, cos(πf/8r) of it: at twice the rate −a, 1 + 2a, −a puts that back, to a
 * thousandth of a decibel where a is 1/128.
 */
const RAISE = 1 / 128;

function raised(taps: Float64Array): Float64Array {
  return Float64Array.from({ length: taps.length + 2 }, (_, n) => {
    const [before = 0, middle = 0, after = 0] = [taps[n - 2], taps[n - 1], taps[n]];
    return (1 + 2 * RAISE) * middle - RAISE * (before + after);
  });
}

const DOWN = raised(windowedSinc(2 * UP_CENTRE + 2, CUTOFF, DOWN_CENTRE - 1));
const [downEven, downOdd] = phasesOf(DOWN);

/** Back: a filter for the even samples and one for the odd ones, of which the sum is the new sample at the even one's time. */
export const EDGE_DOWN: Phases = [downEven, Float64Array.of(0, ...downOdd)];
