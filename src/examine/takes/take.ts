import type { Settings } from "../../build-file/settings.ts";

/** A coil that a small coil lies over. */
export interface Placement {
  readonly pickup: string;
  readonly coil: string;
}

/** What one recording says, a complex number with the standard error of its real and imaginary part at every frequency. */
export interface Take {
  readonly settings: Settings;
  /** "jack": the share of the played voltage that is left behind the resistor; else what reaches the jack of an exciter's. */
  readonly through: "jack" | Placement;
  readonly frequenciesHz: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly sd: Float64Array;
  /** What the person calls it. */
  readonly label?: string | undefined;
  /** Whether it was divided by what was played; without that its time is only known to some microseconds. */
  readonly hasReference: boolean;
}

const FROM_HZ = 60;
const TO_HZ = 15_000;
/** Of the measuring signal's sixteen tones an octave, so many stand between two that are used. */
const EVERY = 4;

/** Which of the frequencies an examination uses: enough to follow what a few coils and capacitors make. */
export function usedFrequencies(frequenciesHz: ArrayLike<number>): number[] {
  return Array.from(frequenciesHz)
    .map((hz, index) => ({ hz, index }))
    .filter(({ hz }) => hz >= FROM_HZ && hz <= TO_HZ)
    .filter((_, index) => index % EVERY === 0)
    .map(({ index }) => index);
}
