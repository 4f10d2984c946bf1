import { DRIVE_BASIS, MAX_DRIVE } from "./drive/law.ts";
import type { CHAINS } from "./names.ts";
import { SPEAKER, SPEAKER_BASIS } from "./speaker/figures.ts";

/** The chains as a caller may choose them. */
export const CHAIN_ENTRIES: readonly { name: (typeof CHAINS)[number]; title: string; description: string }[] = [
  { name: "none", title: "As it comes out of the jack", description: "the guard alone, as its curves are" },
  {
    name: "clean",
    title: "Clean amplifier and 12-inch speaker",
    description: "a flat amplifier, driven as hard as you like, and a usual speaker",
  },
];

/** Every figure of the chain, with what it rests on. */
export const CHAIN_FIGURES = {
  chains: CHAIN_ENTRIES,
  amplifier: { response: "flat, no tone controls", driveFrom: 0, driveTo: MAX_DRIVE, basis: DRIVE_BASIS },
  speaker: { ...SPEAKER, basis: SPEAKER_BASIS },
} as const;
