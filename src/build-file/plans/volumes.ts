import { capitalised } from "../../english.ts";
import type { Draft, PotInput } from "./draft.ts";
import type { Layout } from "./layouts.ts";
import { beside, type Place, placeOf } from "./places.ts";
import { planFault } from "./plan-fault.ts";
import type { Plan, PlanTone, PlanVolume } from "./plan-schema.ts";

/** A volume pot in its place: where signal enters and leaves. */
export interface Volume {
  readonly name: string;
  /** The one pickup it serves; undefined where it serves all. */
  readonly pickup: string | undefined;
  readonly input: string;
  readonly output: string;
}

export function potPart(role: "volume" | "tone", label: string, place: Place, spec: PlanVolume | PlanTone): PotInput {
  const { pot, taper = "audio", midpoint, measured } = spec;
  return {
    kind: "pot",
    role,
    label,
    resistance: pot,
    taper,
    ...(midpoint === undefined ? {} : { midpoint }),
    ...(measured === undefined ? {} : { measured }),
    ...("noLoad" in spec && spec.noLoad ? { noLoad: true } : {}),
    place,
  };
}

function ownVolumes(plan: Plan, layout: Layout): { spec: PlanVolume; pickup: string }[] {
  const neckFirst = [...layout.pickups].reverse();
  if (!plan.volumes) return neckFirst.map((pickup) => ({ spec: plan.volume as PlanVolume, pickup }));
  if (plan.volumes.length !== 2) throw planFault("volumes", "has one volume; expected two, or `volume` for both alike");
  const owned = plan.volumes.map((spec, index) => {
    const [pickup, ...others] = spec.pickups ?? [];
    if (!pickup || others.length > 0 || !layout.pickups.includes(pickup))
      throw planFault(`volumes.${index}.pickups`, 'expected one of ["neck"] and ["bridge"]');
    return { spec, pickup };
  });
  if (owned[0]!.pickup === owned[1]!.pickup)
    throw planFault("volumes.1.pickups", `${owned[1]!.pickup} has a volume already`);
  return owned;
}

function checkVolumes(plan: Plan, layout: Layout): void {
  const given = [plan.volume, plan.volumes].filter((value) => value !== undefined).length;
  if (given !== 1) throw planFault("volume", "expected either `volume` or, with two volumes, `volumes`");
  if (layout.volumes === 1 && plan.volumes)
    throw planFault("volumes", `${plan.layout} has one volume; expected \`volume\``);
  if (plan.volume && "pickups" in plan.volume && plan.volume.pickups)
    throw planFault("volume.pickups", "expected none: this volume serves every pickup");
}

/** Draws up the volume pots. Wires come later, when the push-pulls are known. */
export function addVolumes(draft: Draft, plan: Plan, layout: Layout): Volume[] {
  checkVolumes(plan, layout);
  const lugs = plan.independentVolumes ? { input: "2", output: "3" } : { input: "3", output: "2" };
  const drawn = (name: string, label: string, spec: PlanVolume, pickup: string | undefined): Volume => {
    draft.part(name, potPart("volume", label, placeOf(layout, name), spec));
    return { name, pickup, input: `${name}.${lugs.input}`, output: `${name}.${lugs.output}` };
  };
  if (layout.volumes === 1) return [drawn("volume", "Volume", plan.volume as PlanVolume, undefined)];
  return ownVolumes(plan, layout).map(({ spec, pickup }, index) =>
    drawn(`volume${index + 1}`, `${capitalised(pickup)} volume`, spec, pickup),
  );
}

/** The bent lug, and a treble bleed from input to output. */
export function finishVolume(draft: Draft, plan: Plan, volume: Volume, suffix: string): void {
  draft.join(`${volume.name}.1`, `${volume.name}.case`, "bent lug");
  const bleed = plan.trebleBleed;
  if (!bleed) return;
  const pot = draft.pot(volume.name)!;
  const at = pot.place as Place;
  const cap = `bleed${suffix}`;
  const resistor = `bleedResistor${suffix}`;
  draft.part(cap, {
    kind: "cap",
    label: "Treble bleed cap",
    capacitance: bleed.capacitance,
    place: beside(at, { x: 0.012, y: -0.004 }),
  });
  draft.join(`${cap}.a`, volume.input, "leg");
  const ohms = bleed.parallel ?? bleed.series;
  if (ohms === undefined) {
    draft.join(`${cap}.b`, volume.output, "leg");
    return;
  }
  const place = beside(at, { x: 0.012, y: 0.004 });
  draft.part(resistor, { kind: "resistor", label: "Treble bleed resistor", resistance: ohms, place });
  draft.join(`${cap}.b`, bleed.series === undefined ? volume.output : `${resistor}.a`, "leg");
  if (bleed.series === undefined) draft.join(`${resistor}.a`, volume.input, "leg");
  draft.join(`${resistor}.b`, volume.output, "leg");
}
