import { LugTable } from "../../build-file/lugs.ts";
import type { Reading } from "../state/reading.ts";
import type { LivePath } from "./live-path.ts";

/** What a lug is joined to in this setting, in words. */
export function lugText({ build }: Reading, { live }: LivePath, name: string): string {
  const net = live.nets.get(name);
  const names = new LugTable(build.parts).lugs.map((lug) => lug.name);
  const joined = names.filter((other) => other !== name && live.nets.get(other) === net);
  const wires = build.wires.filter(({ from, to }) => from === name || to === name).length;
  const what = joined.length === 0 ? "nothing" : joined.join("; ");
  const kind = net === live.sleeveNet ? " (ground)" : net === live.tipNet ? " (hot, at the jack's tip)" : "";
  return `${name}${kind}: ${wires} ${wires === 1 ? "wire" : "wires"} on it; joined in this setting to ${what}.`;
}
