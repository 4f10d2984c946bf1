import { showQuantity } from "../../build-file/show-quantity.ts";
import type { TakeColumns } from "./take-columns.ts";

/** Nothing is this small, as a share of full scale, but what is not heard. */
const SILENT = 1e-7;

interface Titled extends Omit<TakeColumns, "curves"> {
  readonly title: string;
  readonly through: unknown;
}

/** Where a take lies furthest from the drawing, by the logarithm of its size. */
function furthest({ magnitudes, expected }: Titled): { index: number; far: number } {
  let [index, far] = [0, 0];
  for (const [i, size] of magnitudes.entries()) {
    const apart = Math.abs(Math.log((size + 1e-9) / (expected.magnitudes[i]! + 1e-9)));
    if (apart > far) [index, far] = [i, apart];
  }
  return { index, far };
}

function heardWords({ title, magnitudes, expected }: Titled, index: number, hz: string): string {
  const [has, drawn] = [magnitudes[index]!, expected.magnitudes[index]!];
  if (drawn < SILENT) return `The take with ${title} is heard at ${hz}, where the guard as drawn is silent.`;
  if (has < SILENT) return `The take with ${title} is silent at ${hz}, where the guard as drawn is heard.`;
  return `The take with ${title} is ${(has / drawn).toPrecision(2)} times as strong at ${hz} as the drawing has it.`;
}

/** "position 2, volume 10 shows 5.1 kΩ at 320 Hz where the drawing has 12 kΩ at most."; undefined where all agree. */
export function worstTake(takes: readonly Titled[]): string | undefined {
  const odd = takes.filter(({ agrees }) => !agrees).map((take) => ({ take, ...furthest(take) }));
  const worst = odd.reduce<(typeof odd)[number] | undefined>(
    (most, each) => (each.far > (most?.far ?? 0) ? each : most),
    undefined,
  );
  if (!worst) return undefined;
  const { take, index } = worst;
  const hz = showQuantity(take.frequencies[index]!, "frequency", 2);
  if (take.through !== "jack") return heardWords(take, index, hz);
  const [has, drawn] = [take.magnitudes[index]!, take.expected.magnitudes[index]!].map((ohms) =>
    showQuantity(ohms, "resistance", 3),
  );
  return `The take with ${take.title} shows ${has} at ${hz} where the guard as drawn comes no nearer than ${drawn}.`;
}
