import type { z } from "zod";
import type { coilSchema } from "../part-schemas.ts";

/** What metal about a coil takes of its EMF, by the metal. */
export interface MetalType {
  readonly name: string;
  readonly title: string;
  readonly shielding: Metal;
}

type Shielding = NonNullable<z.input<typeof coilSchema>["shielding"]>;
type Metal = Exclude<Shielding, readonly unknown[]>;

/**
 * Fitted within 0.9 dB to EMFs of real coils from 0.5 to 8 kHz, each over that of a coil on alnico rods under the same exciter, so
 * that the exciter's own slope cancels: open data set strayr/pickupAnalyseR-data, CC0-1.0, reduced from its raw curves. A coil on alnico
 * rods has none: others like it were within 0.3 dB of the reference up to 3 kHz.
 */
export const WIDE_SINGLE = { shelf: 2150, depth: 3.5 } as const;
export const OPEN_HUMBUCKER = { shelf: 1370, depth: 1.4 } as const;
export const NECK_COVER = { pole: 3010 } as const;
/**
 * On top of what the steel under it takes, of one coil measured with its cover on and off the same day; the others that are covered
 * have that in them.
 */
export const GOOD_COVER = { pole: 10_500 } as const;

/** A cover on top of the steel under it. */
export const COVERED_HUMBUCKER = [OPEN_HUMBUCKER, GOOD_COVER];

export const METAL_TYPES: readonly MetalType[] = [
  { name: "steel-poles", title: "steel poles, single coil", shielding: { shelf: 1880, depth: 1.6 } },
  { name: "open-humbucker", title: "open humbucker", shielding: OPEN_HUMBUCKER },
  { name: "wide-single", title: "wide single coil on bar magnets", shielding: WIDE_SINGLE },
  { name: "base-plate", title: "metal base plate", shielding: { shelf: 1230, depth: 2.4 } },
  { name: "neck-cover", title: "small single coil's cover", shielding: NECK_COVER },
  { name: "plain-cover", title: "humbucker cover of plain make", shielding: { shelf: 4020, depth: 12 } },
  { name: "good-cover", title: "humbucker cover of low loss", shielding: GOOD_COVER },
  { name: "closed-can", title: "closed can", shielding: { shelf: 2760, depth: 12.7 } },
];
