import { LugTable } from "../../build-file/lugs.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Pickup, Wire } from "../../build-file/schema.ts";
import { USUAL_SCREENED_FARADS_PER_METRE } from "../../build-file/wire-kinds.ts";
import { coilPlaces } from "../../response/coil-places.ts";
import { coilSources } from "../../response/pickup-elements.ts";
import { Wiring } from "../../wiring/nets.ts";
import { lengthOf } from "./path.ts";
import type { Routes } from "./routes.ts";

/** Shorter ones are not worth stripping a screen for; common practice, no source. */
const LEAST_SCREENED_METRES = 0.05;

/** Which wires carry signal: those that no wire joins to the jack's sleeve. */
function liveWires(build: Build): boolean[] {
  const table = new LugTable(build.parts);
  const { netOfLug } = new Wiring(build).wiredNets();
  const [[jack]] = partsOfKind(build, "jack") as [[string, unknown]];
  const ground = netOfLug[table.indexOf(`${jack}.sleeve`)];
  return build.wires.map(({ from }) => netOfLug[table.indexOf(from)] !== ground);
}

function withCapacitance(build: Build, routes: Routes, faradsPerMetre: number, leastMetres: number): Build {
  const live = liveWires(build);
  const wires = build.wires.map((wire, index): Wire => {
    const length = lengthOf(routes.wires[index]!);
    if (!live[index] || length < leastMetres || ("kind" in wire && wire.kind === "screened")) return wire;
    return { ...wire, kind: "screened", length, capacitance: faradsPerMetre };
  });
  return { ...build, wires };
}

/** The guard with foil near its wires, against which each has so much capacitance. */
export function withFoil(build: Build, routes: Routes, faradsPerMetre: number): Build {
  return withCapacitance(build, routes, faradsPerMetre, 0);
}

/** The guard with every longer signal wire screened. */
export function withScreenedWires(build: Build, routes: Routes): Build {
  return withCapacitance(build, routes, USUAL_SCREENED_FARADS_PER_METRE, LEAST_SCREENED_METRES);
}

function reversed(pickup: Pickup): Pickup {
  const coils = Object.entries(pickup.coils).map(([name, coil]) => [
    name,
    {
      ...coil,
      winding: coil.winding === "forward" ? "reverse" : "forward",
      magnet: coil.magnet === "north" ? "south" : "north",
    },
  ]);
  return { ...pickup, coils: Object.fromEntries(coils) };
}

/**
 * The guard with the middle one of its single coils, of two the one nearer the neck, wound the other way on turned magnets: the
 * string's signal keeps its sign. Null where there is one already, or nothing to pair it with.
 */
export function withReverseWound(build: Build): { readonly build: Build; readonly pickup: string } | null {
  const singles = partsOfKind(build, "pickup").filter(([, { coils }]) => Object.keys(coils).length === 1);
  const windings = new Set(singles.flatMap(([, { coils }]) => Object.values(coils).map(({ winding }) => winding)));
  if (singles.length < 2 || windings.size > 1) return null;
  const distance = ([name, pickup]: [string, Pickup]) =>
    coilPlaces(build, coilSources(name, pickup))[0]!.distanceMetres;
  const fromBridge = [...singles].sort((a, b) => distance(a) - distance(b));
  const [name, pickup] = fromBridge[Math.floor(fromBridge.length / 2)]!;
  return { build: { ...build, parts: { ...build.parts, [name]: reversed(pickup) } }, pickup: name };
}
