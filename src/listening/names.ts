/** `none`: as it comes out of the jack; `clean`: through a clean amplifier and a speaker. */
export const CHAINS = ["none", "clean"] as const;
/** The stated speaker, or an impulse response of one's own. */
export const CABINETS = ["stated", "own"] as const;

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
