import type { AskedChain } from "../../sound/chain-key.ts";
import type { AppState } from "../../state/app-state.ts";

type Choice = Pick<AppState, "heardThrough" | "drive" | "cabinet">;

/** What tells one way of hearing from another. */
export const heardIn = ({ heardThrough, drive, cabinet }: Choice) => [heardThrough, drive, cabinet] as const;

const read = new WeakMap<File, Promise<AskedChain["cabinet"]>>();
let lastKey = 0;

function cabinetIn(file: File): Promise<AskedChain["cabinet"]> {
  const known = read.get(file);
  if (known) return known;
  lastKey += 1;
  const key = `${lastKey} ${file.name}`;
  const cabinet = file.arrayBuffer().then((buffer) => ({ key, bytes: new Uint8Array(buffer) }));
  read.set(file, cabinet);
  return cabinet;
}

/** The chain that is chosen; until one's own cabinet has a file, it is the stated speaker. */
export async function askedChain({ heardThrough, drive, cabinet }: Choice): Promise<AskedChain | undefined> {
  if (heardThrough === "jack") return undefined;
  return { drive, cabinet: heardThrough === "own" && cabinet ? await cabinetIn(cabinet.file) : undefined };
}

/** The same for a request, with the file that goes along. */
export function requestedChain({ heardThrough, drive, cabinet }: Choice) {
  if (heardThrough === "jack") return {};
  const file = heardThrough === "own" ? cabinet?.file : undefined;
  return { listening: { chain: "clean" as const, drive, ...(file && { cabinet: "own" as const }) }, file };
}
