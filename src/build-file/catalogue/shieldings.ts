import type { CoilInput } from "./pickup-types.ts";

/** What metal about a coil takes of its EMF, by the metal. */
export interface MetalType {
  readonly name: string;
  readonly title: string;
  readonly shielding: NonNullable<CoilInput["shielding"]>;
}

/**
 * Fitted within 0.9 dB to EMFs of real coils from 0.5 to 8 kHz, each over that of a coil on alnico rods under the same exciter, so
 * that the exciter's own slope cancels: open data set strayr/pickupAnalyseR-data, CC0-1.0, reduced from its raw curves. The last is
 * one coil measured with its cover on and off the same day.
 */
export const METAL_TYPES: readonly MetalType[] = [
  { name: "steel-poles", title: "steel poles, single coil", shielding: { shelf: 1880, depth: 1.6 } },
  { name: "open-humbucker", title: "open humbucker", shielding: { shelf: 1370, depth: 1.4 } },
  { name: "wide-single", title: "wide single coil on bar magnets", shielding: { shelf: 2150, depth: 3.5 } },
  { name: "base-plate", title: "metal base plate", shielding: { shelf: 1230, depth: 2.4 } },
  { name: "neck-cover", title: "small single coil's cover", shielding: { pole: 3010 } },
  { name: "plain-cover", title: "humbucker cover of plain make", shielding: { shelf: 4020, depth: 12 } },
  { name: "good-cover", title: "humbucker cover of low loss", shielding: { pole: 10_500 } },
  { name: "closed-can", title: "closed can", shielding: { shelf: 2760, depth: 12.7 } },
];
