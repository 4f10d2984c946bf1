import type { DrawerRequest, PartsListAnswer } from "../../../contract/bench/bench.ts";
import type { BuildSource } from "../../state/reading.ts";

/** What the drawer holds: so many for each line of the parts list, and what no line takes. */
export interface Stock {
  readonly amounts: readonly number[];
  readonly others: readonly DrawerRequest[];
}

/** Read off the answer to a drawer; what is too many counts to the last line of its value. */
export function stockOf({ lines, staysOver }: PartsListAnswer, drawer: readonly DrawerRequest[]): Stock {
  const amounts = lines.map(({ fromDrawer }) => fromDrawer);
  for (const { quantity, drawer: items } of staysOver) {
    const line = lines.findLastIndex((each) => each.drawer.includes(items[0]!));
    if (line >= 0) amounts[line]! += quantity;
  }
  const taken = new Set(lines.flatMap((line) => line.drawer));
  return { amounts, others: drawer.filter((_, index) => !taken.has(index)) };
}

/** The drawer to ask about. */
export function drawerOf({ amounts, others }: Stock, lines: PartsListAnswer["lines"], source: BuildSource) {
  const ofLines = lines.flatMap((line, index): DrawerRequest[] => {
    const part = source.parts[line.parts[0]!];
    // It was read as a part of this build, or there would be no list.
    return amounts[index]! > 0 && part ? [{ part: part as DrawerRequest["part"], quantity: amounts[index]! }] : [];
  });
  return [...ofLines, ...others];
}
