import { changedWire, wireEnds, wireHow } from "../../describe/wire-ends.ts";
import type { BuildSource, WireSource } from "../../state/reading.ts";

export function withWire(source: BuildSource, from: string, to: string): BuildSource {
  return { ...source, wires: [...source.wires, [from, to]] };
}

/** A build with a wire in the place of another, which may be gone by now. */
export function withChangedWire(source: BuildSource, wire: WireSource, next: WireSource): BuildSource {
  if (!source.wires.includes(wire)) return source;
  return { ...source, wires: source.wires.map((each) => (each === wire ? next : each)) };
}

export function withoutWire(source: BuildSource, wire: WireSource): BuildSource {
  if (!source.wires.includes(wire)) return source;
  return { ...source, wires: source.wires.filter((each) => each !== wire) };
}

export function wireColour(wire: WireSource): string {
  return "from" in wire ? String(wire.colour ?? "") : "";
}

/** A wire of another colour; of none where the text is empty. */
export function colouredWire(wire: WireSource, text: string): WireSource {
  const [from, to] = wireEnds(wire);
  const { colour: _, ...rest } = { ...("from" in wire ? wire : {}), from, to } as Record<string, unknown>;
  const colour = text.trim();
  const whole = { ...rest, from, to, ...(colour === "" ? {} : { colour }) };
  // What has no property of its own left becomes a short pair again.
  return changedWire(whole, "how", wireHow(wire));
}
