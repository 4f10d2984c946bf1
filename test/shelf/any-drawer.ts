import fc from "fast-check";
import type { KeptDrawer } from "../../src/drawer/kept-drawer.ts";

const text = fc.string({ unit: "binary", maxLength: 20 });
const price = fc.option(fc.integer({ min: 0, max: 9999 }), { nil: undefined });
const count = fc.integer({ min: 0, max: 9 });
const part = fc.oneof(
  fc.record({ kind: fc.constant("cap"), capacitance: fc.constantFrom("22n", 4.7e-8, "0.022uF") }),
  fc.record({ kind: fc.constant("pot"), resistance: fc.constantFrom("250k", 500000), taper: fc.constant("audio") }),
  fc.record({ kind: fc.constant("jack") }),
);

/** Entries as a page writes them: each with an id, a price only where it is known. */
function entries<T extends object>(content: fc.Arbitrary<T>) {
  const entry = fc
    .tuple(fc.uuid(), content, price)
    .map(([id, rest, paid]) => ({ id, ...rest, ...(paid === undefined ? {} : { price: paid }) }));
  return fc.uniqueArray(entry, { selector: ({ id }) => id, maxLength: 4 });
}

export const anyDrawer: fc.Arbitrary<KeptDrawer> = fc.record({
  id: fc.constant("drawer" as const),
  currency: text,
  items: entries(fc.record({ part, count, name: text })),
  kits: entries(fc.record({ name: text, count, content: fc.array(fc.record({ part, count }), { maxLength: 3 }) })),
  wires: entries(fc.record({ kind: fc.constant("cloth"), length: fc.constantFrom("2m", 3), colour: text })),
  counted: fc.dictionary(fc.uuid(), fc.boolean(), { maxKeys: 3 }),
}) as unknown as fc.Arbitrary<KeptDrawer>;
