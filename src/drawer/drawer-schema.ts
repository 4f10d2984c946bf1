import * as z from "zod";
import { parseQuantity, QuantityError } from "../build-file/quantity.ts";
import { partSchema } from "../build-file/schema.ts";
import { WIRE_KINDS } from "../build-file/wire-kinds.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import {
  MAX_DRAWER_ITEMS,
  MAX_DRAWER_KITS,
  MAX_DRAWER_QUANTITY,
  MAX_DRAWER_WIRES,
  MAX_NAME_CHARS,
  MAX_PRICE,
} from "../limits.ts";

const price = z
  .number()
  .min(0)
  .max(MAX_PRICE)
  .optional()
  .describe("of one, in the drawer's currency, to a hundredth; absent: not known");
const name = z.string().trim().max(MAX_NAME_CHARS).optional().describe("what it is called at home");

const MEASURED_IN = { cap: "capacitance", pot: "resistance", resistor: "resistance" } as const;
const isMeasurable = (kind: string): kind is keyof typeof MEASURED_IN => Object.hasOwn(MEASURED_IN, kind);

const ownedPart = partSchema.refine((part) => part.kind !== "terminal", {
  error: "a connection point of the guitar is no part to own; expected a pickup, pot, cap, resistor, switch or jack",
});

/** Parts alike, some of them measured. */
export const drawerItemSchema = strict({
  part: ownedPart.describe("written as in a build file"),
  count: z.int().min(0).max(MAX_DRAWER_QUANTITY).default(1).describe("owned, soldered in or not; 0: only its price"),
  measured: z
    .array(z.union([z.number(), z.string()]))
    .max(MAX_DRAWER_QUANTITY)
    .default([])
    .describe("of a cap, pot or resistor: what a meter read of each that was measured"),
  price,
  name,
}).transform(({ measured, ...item }, context) => {
  const fault = (path: (string | number)[], message: string) => context.addIssue({ code: "custom", path, message });
  if (measured.length > item.count)
    fault(["measured"], `has ${measured.length} values of ${item.count} parts; expected one a part at most`);
  if (measured.length > 0 && !isMeasurable(item.part.kind))
    fault(["measured"], `a ${item.part.kind} has no one value; expected a cap, pot or resistor`);
  const values = measured.map((written, index) => {
    if (!isMeasurable(item.part.kind)) return 0;
    try {
      const { value } = parseQuantity(written, MEASURED_IN[item.part.kind]);
      if (!(value > 0)) fault(["measured", index], `is ${value}; expected more than 0`);
      return value;
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      fault(["measured", index], error.message);
      return 0;
    }
  });
  return { ...item, measured: values };
});

/** One thing to buy or to own, with several parts in it. */
export const drawerKitSchema = strict({
  name: z.string().trim().min(1).max(MAX_NAME_CHARS),
  count: z.int().min(0).max(MAX_DRAWER_QUANTITY).default(1).describe("owned and not opened; 0: only its price"),
  price,
  content: z
    .array(strict({ part: ownedPart, count: z.int().min(1).max(MAX_DRAWER_QUANTITY).default(1) }))
    .max(MAX_DRAWER_ITEMS),
});

export const drawerWireSchema = strict({
  kind: oneOf(WIRE_KINDS),
  colour: z.string().max(30).optional(),
  length: quantity("length", { min: 0, max: 10_000 }, "on the reel"),
  price: price.describe("of a metre"),
});

export const drawerSchema = strict({
  currency: z.string().trim().max(12).default("").describe("what prices are in, in the person's own words"),
  items: z.array(drawerItemSchema).max(MAX_DRAWER_ITEMS).default([]),
  kits: z.array(drawerKitSchema).max(MAX_DRAWER_KITS).default([]),
  wires: z.array(drawerWireSchema).max(MAX_DRAWER_WIRES).default([]),
});

/** The drawer once read: SI numbers, nothing left to check. */
export type Drawer = z.output<typeof drawerSchema>;
/** As a person writes it, and as it is kept. */
export type DrawerInput = z.input<typeof drawerSchema>;
export type DrawerEntry = Drawer["items"][number];
export type DrawerKit = Drawer["kits"][number];
export type OwnedPart = DrawerEntry["part"];
