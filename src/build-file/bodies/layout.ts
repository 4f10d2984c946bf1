import type { Build, Part } from "../schema.ts";

/** Metres: x from the bridge towards the neck, y from the bass side towards the treble side. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A customary guard with its controls in a row along the treble edge; distances from memory, common practice. */
const POT_ROW: readonly Place[] = [
  { x: 0.03, y: 0.075 },
  { x: -0.005, y: 0.095 },
  { x: -0.04, y: 0.11 },
  { x: -0.075, y: 0.12 },
];
const SWITCH_ROW: readonly Place[] = [
  { x: 0.075, y: 0.075 },
  { x: 0.11, y: 0.085 },
];
const PICKUP_STEP = 0.06;
const FIRST_PICKUP = 0.04;
const JACK: Place = { x: -0.09, y: 0.15 };
const CLAW: Place = { x: -0.03, y: -0.05 };

/** The n-th place of a row, which goes on at its last step. */
function inRow(row: readonly Place[], index: number): Place {
  const last = row.length - 1;
  if (index <= last) return row[index]!;
  const [a, b] = [row[last - 1]!, row[last]!];
  const beyond = index - last;
  return { x: b.x + (b.x - a.x) * beyond, y: b.y + (b.y - a.y) * beyond };
}

function usualPlace(part: Part, index: number): Place {
  switch (part.kind) {
    case "pickup": {
      const distances = Object.values(part.coils).flatMap((coil) => coil.distance ?? []);
      const mean = distances.reduce((sum, value) => sum + value, 0) / distances.length;
      return { x: distances.length > 0 ? mean : FIRST_PICKUP + PICKUP_STEP * index, y: 0 };
    }
    case "pot":
      return inRow(POT_ROW, index);
    case "switch":
      return inRow(SWITCH_ROW, index);
    case "jack":
      return JACK;
    case "terminal":
      return CLAW;
    case "cap":
    case "resistor":
      return inRow(POT_ROW, 0);
  }
}

/**
 * Where every part sits: its own `place`, else its place on a customary guard. A cap or resistor without a place hangs where
 * its legs go, on the first placed part that it is wired to.
 */
export function layoutOf(build: Build): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  const counts = new Map<string, number>();
  for (const [name, part] of Object.entries(build.parts)) {
    const index = counts.get(part.kind) ?? 0;
    counts.set(part.kind, index + 1);
    places.set(name, part.place ?? usualPlace(part, index));
  }
  for (const [name, part] of Object.entries(build.parts)) {
    if ((part.kind !== "cap" && part.kind !== "resistor") || part.place) continue;
    const carrier = carrierOf(build, name);
    if (carrier !== undefined) places.set(name, places.get(carrier)!);
  }
  return places;
}

/** The first pot, else the first other part, that a cap or resistor is wired to. */
export function carrierOf(build: Build, legged: string): string | undefined {
  const others = build.wires.flatMap(({ from, to }) => {
    const [a, b] = [from.split(".")[0]!, to.split(".")[0]!];
    return a === legged ? [b] : b === legged ? [a] : [];
  });
  const kindOf = (name: string) => build.parts[name]?.kind;
  return (
    others.find((name) => kindOf(name) === "pot") ??
    others.find((name) => kindOf(name) !== "cap" && kindOf(name) !== "resistor")
  );
}
