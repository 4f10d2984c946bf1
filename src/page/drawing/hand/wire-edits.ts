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

type Detail = "colour" | "kind" | "length" | "capacitance";

export function wireDetail(wire: WireSource, key: Detail): string {
  return "from" in wire ? String((wire as Record<string, unknown>)[key] ?? "") : "";
}

/** A wire with something else said of it; nothing where the text is empty. */
export function wireWithDetail(wire: WireSource, key: Detail, text: string): WireSource {
  const [from, to] = wireEnds(wire);
  const { [key]: _, ...rest } = { ...("from" in wire ? wire : {}), from, to } as Record<string, unknown>;
  const value = text.trim();
  const whole = { ...rest, from, to, ...(value === "" ? {} : { [key]: value }) } as WireSource;
  // What has no property of its own left becomes a short pair again.
  return changedWire(whole, "how", wireHow(wire));
}

export const wireColour = (wire: WireSource): string => wireDetail(wire, "colour");
export const wireKind = (wire: WireSource): string => wireDetail(wire, "kind");

/** A wire of another colour; of none where the text is empty. */
export const colouredWire = (wire: WireSource, text: string): WireSource => wireWithDetail(wire, "colour", text);

/** Such as leads from a guard to its jack are: a screened wire has to say how long it is. */
const USUAL_SCREENED_LENGTH = "0.25m";

/** A wire of another kind; of none where it is empty. Only a screened one has a capacitance. */
export function wireOfKind(wire: WireSource, kind: string): WireSource {
  const other = wireWithDetail(wire, "kind", kind);
  if (kind !== "screened") return wireWithDetail(other, "capacitance", "");
  return wireDetail(other, "length") === "" ? wireWithDetail(other, "length", USUAL_SCREENED_LENGTH) : other;
}
