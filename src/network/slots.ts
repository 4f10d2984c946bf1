import type { Element, Network } from "./elements.ts";

/** Corner frequencies of the two shelves that every source's branch may have in series beside its own inductance, rad/s. */
export const SHELF_CORNERS = [2 * Math.PI * 2000, 2 * Math.PI * 8000] as const;

/** Numbers that an element's impedance is made of: ohms, farads, or ohms and henries; and a source's shelves, in henries. */
export function slotCount(element: Element): number {
  if (element.kind !== "branch") return 1;
  return element.source === undefined ? 2 : 2 + SHELF_CORNERS.length;
}

/** Where each element's slots begin, and then each mutual inductance's one; the last says how many there are. */
export function slotStarts({ elements, mutuals }: Network): Int32Array {
  const starts = new Int32Array(elements.length + mutuals.length + 1);
  for (const [index, element] of elements.entries()) starts[index + 1] = starts[index]! + slotCount(element);
  for (let index = elements.length; index < starts.length - 1; index++) starts[index + 1] = starts[index]! + 1;
  return starts;
}

/** The values of all slots, shelves at none. */
export function slotValues(network: Network): number[] {
  const ofElements = network.elements.flatMap((element) => {
    if (element.kind === "resistor") return [element.ohms];
    if (element.kind === "capacitor") return [element.farads];
    const own = [element.ohms, element.henries];
    return element.source === undefined ? own : [...own, ...SHELF_CORNERS.map(() => 0)];
  });
  return [...ofElements, ...network.mutuals.map(({ henries }) => henries)];
}
