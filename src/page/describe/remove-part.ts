import type { BuildSource, WireSource } from "../state/reading.ts";
import { wireEnds } from "./wire-ends.ts";

function touches(wire: WireSource, part: string): boolean {
  return wireEnds(wire).some((lug) => lug === part || lug.startsWith(`${part}.`));
}

/** A build without a part and the wires that went to it. */
export function removePart(source: BuildSource, name: string): BuildSource {
  const { [name]: _, ...parts } = source.parts;
  return { ...source, parts, wires: source.wires.filter((wire) => !touches(wire, name)) };
}
