import { CATALOGUE } from "../../build-file/catalogue.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import type { WantedGuard, WantedRequest } from "../../contract/wanted.ts";
import { MAX_CANDIDATES } from "../../limits.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { DrawerDesk } from "../drawer/drawer-desk.ts";
import { openDrawer } from "../drawer/drawer-keeper.ts";
import type { Bench } from "../start/bench.ts";

type Part = { readonly kind: string } & Readonly<Record<string, unknown>>;

const USUAL_PLACES = ["neck", "middle", "bridge"];
const TYPES = CATALOGUE.pickups.map(({ name }) => name);

/** Every part of which one lies free, kits' contents included. */
function freeParts({ drawer, told }: DrawerDesk["view"]): Part[] {
  const items = drawer.items.filter(({ count = 1 }, index) => count > (told?.items[index]?.soldered ?? 0));
  const kits = drawer.kits.filter(({ count = 1 }) => count > 0).flatMap(({ content }) => content);
  return [...items, ...kits].map(({ part }) => part as Part);
}

/** Each value once, as it is written. @throws Error where there is none */
function valuesOf(parts: readonly Part[], kind: string, key: string, dimension: Dimension, what: string): string[] {
  const written = parts.flatMap((part) => (part.kind === kind ? [String(part[key])] : []));
  const known = new Map(written.map((text) => [parseQuantity(text, dimension).value, text]));
  if (known.size === 0) throw new Error(`No ${what} lies free in the drawer, so no guard can be made of it alone.`);
  return [...known.values()].slice(0, MAX_CANDIDATES);
}

function pickupsFor(parts: readonly Part[], places: readonly string[]): Record<string, string[]> {
  const types = [...new Set(parts.flatMap(({ kind, type }) => (kind === "pickup" ? [String(type)] : [])))];
  const known = types.filter((type) => TYPES.includes(type));
  if (known.length === 0)
    throw new Error("No pickup of a known kind lies free in the drawer, so no guard can be made of it alone.");
  return Object.fromEntries(places.map((place) => [place, known]));
}

/** The search held to what lies free in the drawer, and what a guard that was found lacks there all the same. */
export interface FromDrawer {
  readonly limits: Pick<WantedRequest, "values" | "pickups" | "switches">;
  lacks(guards: readonly WantedGuard[]): Promise<readonly string[]>;
}

/** @param ownPlaces of the plan that is begun with alone; else those of the customary guards @throws Error in words */
export async function fromDrawer(bench: Bench, ownPlaces: readonly string[] | undefined): Promise<FromDrawer> {
  let fault = "";
  const desk = new DrawerDesk(bench, await openDrawer(), (words) => {
    fault = words;
  });
  await desk.refresh();
  if (fault !== "") throw new Error(fault);
  const parts = freeParts(desk.view);
  const pots = valuesOf(parts, "pot", "resistance", "resistance", "pot");
  const values = {
    volume: pots,
    tone: pots,
    cap: valuesOf(parts, "cap", "capacitance", "capacitance", "cap"),
    bleed: ["none" as const],
  };
  const pickups = pickupsFor(parts, ownPlaces ?? USUAL_PLACES) as NonNullable<WantedRequest["pickups"]>;
  return {
    limits: { values, pickups, switches: false },
    lacks: async (guards) => {
      const { drawer, soldered } = desk.asked;
      const found = guards.map(({ build }) => ({ build, isSoldered: false }));
      const all = [...found, ...soldered.map((build) => ({ build, isSoldered: true }))];
      const asked = all.map(({ build, isSoldered }) => ({
        name: "",
        file: JSON.stringify(build),
        isSoldered,
        isOnList: false,
      }));
      const reply = await benchEngineOf(bench.store).drawer({ drawer, guards: asked });
      if (!("told" in reply)) return [];
      return reply.told.guards.slice(0, guards.length).map(({ lines, missing }) => {
        const lacking = lines.filter(({ there, wanted }) => there < wanted);
        return missing === 0 ? "" : lacking.map(({ what, there, wanted }) => `${wanted - there} × ${what}`).join(", ");
      });
    },
  };
}
