import type { Remainder } from "../hypotheses/remainder.ts";

export interface RemainderAnswer {
  /** Probability, 0 to 1, that it is none of the explanations alone. */
  readonly probability: number;
  readonly message: string;
}

function percent(probability: number): string {
  return probability < 0.01 ? "under 1 %" : `${Math.round(100 * probability)} %`;
}

/** What the explanations leave over, in words. */
export function remainderAnswer({ hidden, outside }: Remainder): RemainderAnswer {
  const second = hidden > 0 ? `a second fault that shows in nothing measured or told (${percent(hidden)}), or ` : "";
  return {
    probability: hidden + outside,
    message: `Left for what this cannot show: ${second}something that was not weighed (${percent(outside)}).`,
  };
}
