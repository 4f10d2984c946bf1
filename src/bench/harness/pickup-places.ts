import { contactLug, trackLugs } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { Wiring } from "../../wiring/nets.ts";

/** A pole's lugs that a switch joins to its common in some position, with the positions that do. */
interface Throw {
  readonly lug: string;
  readonly pole: string;
  readonly positions: string;
}

function throwsOf({ main }: Controls): Throw[] {
  if (!main) return [];
  const { lugs, positions } = main.table;
  const isJoined = (lug: string, index: number) =>
    positions[index]!.some((group) => group.length > 1 && group.includes(lug));
  const joinedIn = (lug: string) => positions.filter((_, index) => isJoined(lug, index)).length;
  // Joined everywhere it is the common; joined nowhere, the frame.
  return lugs
    .filter((lug) => joinedIn(lug) > 0 && joinedIn(lug) < positions.length)
    .map((lug) => ({
      lug: contactLug(main.name, lug),
      pole: lug.replace(/\d+$/, ""),
      positions: positions.flatMap((_, index) => (isJoined(lug, index) ? [index + 1] : [])).join(),
    }));
}

/** A harness's lugs by the nets that its wires make. */
class Harness {
  readonly controls: Controls;
  readonly #wiring: Wiring;
  readonly #netOfLug: Int32Array;
  readonly #build: Build;

  constructor(build: Build) {
    this.#build = build;
    this.controls = new Controls(build);
    this.#wiring = new Wiring(build);
    this.#netOfLug = this.#wiring.wiredNets().netOfLug;
  }

  #others(lug: string) {
    const own = this.#wiring.lugs.indexOf(lug);
    return this.#wiring.lugs.lugs.filter((_, other) => other !== own && this.#netOfLug[other] === this.#netOfLug[own]);
  }

  isBare(lug: string): boolean {
    return this.#others(lug).length === 0;
  }

  /** Whether a pole's common meets a volume or the jack's tip, and not the jack's sleeve. */
  goesOn(pole: string): boolean {
    const common = this.controls.main && contactLug(this.controls.main.name, `${pole}0`);
    if (common === undefined || this.#wiring.lugs.find(common) === undefined) return false;
    const others = this.#others(common);
    const isSleeve = (lug: string) => lug.endsWith(".sleeve");
    if (others.some(({ name }) => isSleeve(name))) return false;
    return others.some(({ part, name }) => {
      const other = this.#build.parts[part]!;
      return (other.kind === "jack" && !isSleeve(name)) || (other.kind === "pot" && other.role === "volume");
    });
  }

  /** Whether a lug still wants a pickup: nothing is on it but controls that shape what comes in there. */
  isOpen(lug: string): boolean {
    return this.#others(lug).every(({ part }) => {
      const other = this.#build.parts[part]!;
      return other.kind === "cap" || other.kind === "resistor" || (other.kind === "pot" && other.role !== "volume");
    });
  }
}

/** Open lugs of volumes that are wired on their other side, as where every pickup has a volume of its own. */
function openVolumeLugs(build: Build, harness: Harness): string[] {
  const volumes = partsOfKind(build, "pot").filter(([, pot]) => pot.role === "volume");
  return volumes.flatMap(([name]) => {
    const [, wiper, top] = trackLugs(name);
    const [wiperIsOpen, topIsOpen] = [harness.isOpen(wiper), harness.isOpen(top)];
    if (wiperIsOpen === topIsOpen) return [];
    return topIsOpen ? [top] : [wiper];
  });
}

/** Open lugs of the selector, one for each place it switches. */
function openThrows(harness: Harness): string[] {
  const throws = throwsOf(harness.controls);
  const bareIn = (pole: string) => throws.filter((each) => each.pole === pole && harness.isBare(each.lug)).length;
  // The side whose common goes on to a volume or the tip is the one kept for pickups, else that with most lugs bare; another
  // side of the switch picks the tones, or what a split grounds.
  const [side] = [...new Set(throws.map(({ pole }) => pole))].sort(
    (a, b) => Number(harness.goesOn(b)) - Number(harness.goesOn(a)) || bareIn(b) - bareIn(a),
  );
  const taken = new Set<string>();
  return throws.flatMap(({ lug, pole, positions }) => {
    if (pole !== side || taken.has(positions) || !harness.isOpen(lug)) return [];
    taken.add(positions);
    return [lug];
  });
}

/** Where the pickups of a harness without any will be soldered: open lugs of the selector, else of the volumes. */
export function pickupPlaces(build: Build): string[] {
  const harness = new Harness(build);
  const atSelector = openThrows(harness);
  return atSelector.length > 0 ? atSelector : openVolumeLugs(build, harness);
}
