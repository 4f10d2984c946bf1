import { DRIVE_BASIS, MAX_DRIVE } from "./drive/law.ts";
import { SPEAKER, SPEAKER_BASIS } from "./speaker/figures.ts";

/** `none`: as it comes out of the jack; `clean`: through a clean amplifier and a speaker. */
export const CHAINS = ["none", "clean"] as const;
/** The stated speaker, or an impulse response of one's own. */
export const CABINETS = ["stated", "own"] as const;

/** The chains as a caller may choose them. */
export const CHAIN_ENTRIES: readonly { name: (typeof CHAINS)[number]; title: string; description: string }[] = [
  { name: "none", title: "As it comes out of the jack", description: "the guard alone, as its curves are" },
  {
    name: "clean",
    title: "Clean amplifier and 12-inch speaker",
    description: "a flat amplifier, driven as hard as you like, and a usual speaker",
  },
];

/** What a chain is called by, whatever its cabinet is made of. */
export interface Named {
  readonly drive: number;
  readonly cabinet?: unknown;
}

/** "clean amplifier and 12-inch speaker, drive 3". */
export function chainWords(listening: Named | undefined): string {
  if (!listening) return "as it comes out of the jack";
  const speaker = listening.cabinet ? "own cabinet" : "12-inch speaker";
  return `clean amplifier and ${speaker}, drive ${listening.drive}`;
}

/** The same at the end of a file's name: "-clean-drive-3"; nothing where there is no chain. */
export function chainSuffix(listening: Named | undefined): string {
  if (!listening) return "";
  const cabinet = listening.cabinet ? "-own-cabinet" : "";
  const drive = listening.drive > 0 ? `-drive-${String(listening.drive).replace(".", "-")}` : "";
  return `-clean${cabinet}${drive}`;
}

/** Every figure of the chain, with what it rests on. */
export const CHAIN_FIGURES = {
  chains: CHAIN_ENTRIES,
  amplifier: { response: "flat, no tone controls", driveFrom: 0, driveTo: MAX_DRIVE, basis: DRIVE_BASIS },
  speaker: { ...SPEAKER, basis: SPEAKER_BASIS },
} as const;
