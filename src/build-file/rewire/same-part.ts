import { hasCoilLeads } from "../lug-names.ts";
import type { Coil, Part } from "../schema.ts";
import { switchTable } from "../switch-types.ts";

/** Values that differ by less were written in other units, not chosen anew. */
const SAME_VALUE = 1e-6;

function alike(a: unknown, b: unknown): boolean {
  if (typeof a === "number" && typeof b === "number")
    return Math.abs(a - b) <= SAME_VALUE * Math.max(Math.abs(a), Math.abs(b));
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b;
  const [first, second] = [Object.entries(a), new Map(Object.entries(b))];
  return (
    first.length === second.size && first.every(([key, value]) => second.has(key) && alike(value, second.get(key)))
  );
}

/** Whether a detail that a build need not tell speaks against it. */
function agree<T>(a: T | undefined, b: T | undefined): boolean {
  return a === undefined || b === undefined || alike(a, b);
}

function coilTraits({ resistance, inductance, capacitance, loss = [], winding, magnet, output }: Coil): object {
  return { resistance, inductance, capacitance, loss, winding, magnet, output };
}

/** What is built into a part, whatever it is called, where it sits and what was measured of it. */
function traitsOf(part: Part): object {
  switch (part.kind) {
    case "pickup":
      return {
        coils: Object.values(part.coils).map(coilTraits),
        ownLeads: hasCoilLeads(part),
        coupling: part.coupling ?? 0,
      };
    case "pot":
      return {
        tracks: [part, ...(part.gangs ?? [])].map(({ resistance, taper }) => ({ resistance, taper })),
        noLoad: part.noLoad,
        shaft: part.drives ? switchTable(part.drives) : {},
      };
    case "switch":
      return switchTable(part);
    case "cap":
      return { capacitance: part.capacitance };
    case "resistor":
      return { resistance: part.resistance };
    case "jack":
      return { stereo: part.stereo };
    case "terminal":
      return {};
  }
}

/** Whether one part is as good as the other, so that its lugs answer to the other's in their order. */
export function isSamePart(a: Part, b: Part): boolean {
  if (a.kind !== b.kind || !alike(traitsOf(a), traitsOf(b))) return false;
  if (a.kind === "terminal" && b.kind === "terminal") return agree(a.role, b.role);
  if (a.kind === "switch" && b.kind === "switch")
    return agree(a.type, b.type) && agree(a.body, b.body) && agree(a.lugRows, b.lugRows);
  if (a.kind === "pot" && b.kind === "pot") return agree(a.body, b.body) && agree(a.drives?.body, b.drives?.body);
  if (a.kind === "jack" && b.kind === "jack") return agree(a.body, b.body);
  if (a.kind === "cap" && b.kind === "cap")
    return agree(a.dielectric, b.dielectric) && agree(a.lossFactor, b.lossFactor);
  return a.kind !== "pickup" || b.kind !== "pickup" || agree(a.metal, b.metal);
}

function mainValue(part: Part): number | undefined {
  if (part.kind === "pot" || part.kind === "resistor") return part.resistance;
  if (part.kind === "cap") return part.capacitance;
  return part.kind === "pickup" ? Object.values(part.coils).reduce((sum, coil) => sum + coil.resistance, 0) : undefined;
}

/** How far apart the values of two parts of one kind are: 0 where equal, 1 for a factor of e. */
export function valueDistance(a: Part, b: Part): number {
  const [first, second] = [mainValue(a), mainValue(b)];
  return first === undefined || second === undefined ? 0 : Math.abs(Math.log(first / second));
}

/** A pot's or terminal's part in the guard; undefined for the other kinds. */
export function roleOf(part: Part): string | undefined {
  return part.kind === "pot" || part.kind === "terminal" ? part.role : undefined;
}
