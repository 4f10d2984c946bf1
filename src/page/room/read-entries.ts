import { PRESET_NAMES, type PresetName } from "../../bench/room/figures.ts";
import {
  type Cavity,
  DEFAULT_BESIDE_METRES,
  DEFAULT_TOLERANCE_METRES,
  type GuardMeasures,
  type Measures,
  type PartMeasures,
  type ShapeSaid,
  SIDES,
  type Standout,
  type StringSpread,
} from "../../bench/room/measures.ts";
import type { Build } from "../../build-file/schema.ts";
import type { InputFault } from "../../errors.ts";
import type { CavityEntry, Entries, GuardEntry, PartEntry } from "./entries.ts";
import { errorFrom, lineFrom, pointsFrom, sizeFrom, sizesFrom, Unreadable } from "./millimetres.ts";

/** Reads texts and keeps what cannot be read as faults, each under its field's path. */
class EntryReader {
  readonly faults: InputFault[] = [];

  /** What a text says; nothing where it is empty or cannot be read. */
  read<Value>(path: string, text: string | undefined, from: (text: string) => Value): Value | undefined {
    const said = text?.trim() ?? "";
    if (said === "") return undefined;
    try {
      return from(said);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.faults.push({ path, message: error.message });
      return undefined;
    }
  }
}

/** "8" is a round hole, "44 x 3" a slot. */
const holeFrom = (text: string): ShapeSaid =>
  /[x×*]/i.test(text) ? { box: sizesFrom(text) } : { round: sizeFrom(text) };

const isPreset = (name: string): name is PresetName => PRESET_NAMES.includes(name as PresetName);

function outlineOf(
  path: string,
  { outline = "", size, points }: PartEntry,
  reader: EntryReader,
): ShapeSaid | undefined {
  if (isPreset(outline)) return outline;
  const at = `${path}.outline`;
  if (outline === "round") return reader.read(at, size, (text) => ({ round: sizeFrom(text) }));
  if (outline === "box") return reader.read(at, size, (text) => ({ box: sizesFrom(text) }));
  return outline === "own" ? reader.read(at, points, lineFrom) : undefined;
}

function standoutOf(path: string, entry: PartEntry, reader: EntryReader): Standout | undefined {
  const reach = reader.read(`${path}.reach`, entry.reach, sizeFrom);
  const width = reader.read(`${path}.width`, entry.width, sizeFrom);
  const side = SIDES.find((each) => each === entry.side);
  return side && reach && width ? { side, reach, width } : undefined;
}

function partOf(name: string, kind: string, entry: PartEntry, reader: EntryReader): PartMeasures {
  const path = `parts.${name}`;
  const standout = standoutOf(path, entry, reader);
  return {
    outline: outlineOf(path, entry, reader),
    depth: reader.read(`${path}.depth`, entry.depth, sizeFrom),
    ears: reader.read(`${path}.ears`, entry.ears, sizesFrom),
    poleSpacing: reader.read(`${path}.poleSpacing`, entry.poleSpacing, sizeFrom),
    bushing: reader.read(`${path}.bushing`, entry.bushing, sizeFrom),
    hole: reader.read(`${path}.hole`, entry.hole, holeFrom),
    ...(kind === "pickup" ? { cable: standout } : { lugs: standout }),
  };
}

/** Without a line there is nothing yet of it to ask about. */
function cavitiesOf(entries: readonly CavityEntry[], reader: EntryReader): Cavity[] {
  return entries.flatMap(({ name, depth, points, tolerance }, index) => {
    const path = `cavities.${index}`;
    const outline = reader.read(`${path}.outline`, points, lineFrom);
    const read = {
      name: name.trim() || `cavity ${index + 1}`,
      depth: reader.read(`${path}.depth`, depth, sizeFrom),
      tolerance: reader.read(`${path}.tolerance`, tolerance, errorFrom),
    };
    return outline ? [{ ...read, outline }] : [];
  });
}

function guardOf({ thickness, stack, screws, screwDiameter, edge }: GuardEntry, reader: EntryReader): GuardMeasures {
  return {
    thickness: reader.read("guard.thickness", thickness, sizeFrom),
    stack: reader.read("guard.stack", stack, sizeFrom),
    screws: reader.read("guard.screws", screws, pointsFrom),
    screwDiameter: reader.read("guard.screwDiameter", screwDiameter, sizeFrom),
    outline: reader.read("guard.outline", edge, lineFrom),
  };
}

function stringsOf({ nut, bridge, scale }: GuardEntry, reader: EntryReader): StringSpread | undefined {
  const spread = {
    nut: reader.read("strings.nut", nut, sizeFrom),
    bridge: reader.read("strings.bridge", bridge, sizeFrom),
    scale: reader.read("strings.scale", scale, sizeFrom),
  };
  if (spread.nut === undefined || spread.bridge === undefined) return undefined;
  return { nut: spread.nut, bridge: spread.bridge, scale: spread.scale, beside: DEFAULT_BESIDE_METRES };
}

const isSaid = (entry: PartEntry) => Object.values(entry).some((text) => text !== "");

/** What was typed, as far as it concerns this guard, in metres; and what of it cannot be read, by the paths of the request. */
export function readEntries(
  build: Build,
  entries: Entries,
): { readonly measures: Measures; readonly faults: InputFault[] } {
  const reader = new EntryReader();
  const here = Object.entries(entries.parts).filter(
    ([name, entry]) => Object.hasOwn(build.parts, name) && isSaid(entry),
  );
  const measures: Measures = {
    cavities: cavitiesOf(entries.cavities, reader),
    parts: Object.fromEntries(
      here.map(([name, entry]) => [name, partOf(name, build.parts[name]!.kind, entry, reader)]),
    ),
    guard: guardOf(entries.guard, reader),
    strings: stringsOf(entries.guard, reader),
    tolerance: reader.read("tolerance", entries.guard.tolerance, errorFrom) ?? DEFAULT_TOLERANCE_METRES,
  };
  return { measures, faults: reader.faults };
}
