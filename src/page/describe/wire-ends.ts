import type { WireObject, WireSource } from "../state/reading.ts";

export function wireEnds(wire: WireSource): readonly [string, string] {
  return "from" in wire ? [wire.from, wire.to] : wire;
}

export function wireHow(wire: WireSource): string {
  return "from" in wire ? String(wire.how ?? "wire") : "wire";
}

/** A wire with one of its properties changed; an ordinary wire stays the short pair it is. */
export function changedWire(wire: WireSource, key: "from" | "to" | "how", value: string): WireSource {
  const [from, to] = wireEnds(wire);
  const whole: WireObject = { ...("from" in wire ? wire : {}), from, to, [key]: value };
  const { how, ...rest } = whole;
  if (how !== undefined && how !== "wire") return whole;
  return Object.keys(rest).length === 2 ? [rest.from, rest.to] : rest;
}
