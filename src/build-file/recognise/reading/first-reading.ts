import { layoutOf } from "../../plans/layouts.ts";
import { type Guard, namesOf, partOf } from "../guard.ts";
import { type Sketch, specOf } from "../sketch.ts";
import { readBleed } from "./bleed.ts";
import { automaticSplits } from "./coils.ts";
import { readResistors } from "./resistors.ts";
import { type Roles, USUAL_NAMES } from "./roles.ts";
import { owners, signalOf } from "./signal.ts";
import { fedTones, ordered, padded, readTones } from "./tones.ts";

/** With one pickup its plan may call it anything: by the place where it lies, if it lies in a usual one, else by its own name. */
function onePickupName(guard: Guard, name: string): string {
  const usual = USUAL_NAMES.filter((position) => {
    const spec = specOf(guard, "one-pickup", position, name);
    return typeof spec === "string" || !JSON.stringify(spec).includes('"distance"');
  });
  return usual.includes(name) ? name : (usual[0] ?? name);
}

function planPickups(guard: Guard, { layout, pickups }: Roles): Record<string, string> {
  const { pickups: names, selector } = layoutOf(layout);
  if (selector === "none") return { [onePickupName(guard, pickups[0]!)]: pickups[0]! };
  return Object.fromEntries([...names].reverse().map((planName) => [planName, pickups[names.indexOf(planName)]!]));
}

export function terminal(guard: Guard, role: "claw" | "shield" | "ground"): string | undefined {
  return namesOf(guard, "terminal").find((name) => partOf(guard, name, "terminal").role === role);
}

/** What the guard looks like at first sight, its push-pulls and small switches still without a purpose. */
export function firstReading(guard: Guard, roles: Roles): Sketch {
  const pickups = planPickups(guard, roles);
  const signal = signalOf(guard, roles, pickups);
  const volumes = owners(guard, roles, pickups);
  const automatic = automaticSplits(guard, roles, pickups, signal);
  const read = readTones(guard, roles);
  const { tones, sharedCap, toneFeed } = fedTones(guard, roles, read, signal, volumes, automatic.length === 0);
  const ofTones = new Set(read.map(({ cap }) => cap));
  const caps = namesOf(guard, "cap").filter((cap) => !ofTones.has(cap));
  const bleed = readBleed(
    guard,
    volumes.map(({ pot }) => pot!),
    caps,
  );
  const layout = layoutOf(roles.layout);
  return {
    layout: roles.layout,
    pickups,
    selector: roles.selector,
    volumes,
    independent: false,
    tones: padded(ordered(tones, [...layout.pickups].reverse()), layout.tones.min),
    sharedCap,
    toneFeed,
    bleed,
    options: automatic,
    resistors: readResistors(guard, roles, pickups, bleed?.resistors ?? []),
    star: terminal(guard, "ground"),
    shield: terminal(guard, "shield"),
    claw: terminal(guard, "claw"),
    jack: roles.jack,
  };
}
