import { BoundedMap } from "../../bounded-map.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Coil } from "../../build-file/schema.ts";
import { switchTable } from "../../build-file/switch-types.ts";
import { readBuildAt } from "../../contract/refusal.ts";
import { CurveReader } from "../../response/curve-reader.ts";
import { ResponseEngine } from "../../response/engine.ts";

/** Builds whose controls are being turned at a time; for any more, every turn costs some milliseconds. */
const MAX_BUILDS = 8;
/** As customary guards have at most. A curve of a hundred parts takes seconds, and what is kept of it tens of megabytes. */
const MAX_CUSTOMARY_PARTS = 40;
/** Of pots and of coils: four humbuckers, each with a volume and a tone. The work grows with the third power of their number. */
const MAX_CUSTOMARY_EACH = 8;
/** Of coils and their loss sections, each an inductance of its own: eight coils of one section each. */
const MAX_INDUCTANCES = 16;
/** Of all switches: four levers and eight toggles. Each arrangement is a network of its own. */
const MAX_POSITIONS = 40;
/** Characters; a plan has one or two thousand, and a long form of the busiest guard some twenty thousand. */
const MAX_TEXT = 50_000;

const sum = (counts: readonly number[]) => counts.reduce((total, each) => total + each, 0);
const sectionsOf = ({ loss }: Coil) => (Array.isArray(loss) ? loss.length : 0);

/** Whether a curve of this build is a matter of milliseconds. */
export function isCustomary(build: Build): boolean {
  const coils = partsOfKind(build, "pickup").flatMap(([, pickup]) => Object.values(pickup.coils));
  const positions = partsOfKind(build, "switch").map(([, part]) => switchTable(part).positions.length);
  return (
    Object.keys(build.parts).length <= MAX_CUSTOMARY_PARTS &&
    partsOfKind(build, "pot").length <= MAX_CUSTOMARY_EACH &&
    coils.length <= MAX_CUSTOMARY_EACH &&
    coils.length + sum(coils.map(sectionsOf)) <= MAX_INDUCTANCES &&
    sum(positions) <= MAX_POSITIONS
  );
}

/**
 * Keeps the builds last asked about, each with what its curves have in common: whoever turns a knob asks about the same build again
 * and again. No answer depends on what is kept.
 */
export class BuildShelf {
  /** By the build file's text, the one asked for last at the end. */
  readonly #kept = new BoundedMap<string, CurveReader>(MAX_BUILDS);

  /** @throws PresolderError BUILD_INVALID, its paths beginning with `build` */
  readerOf(input: unknown): CurveReader {
    const text = JSON.stringify(input);
    const reader = this.#kept.get(text) ?? newReader(input);
    this.#kept.delete(text);
    if (text.length <= MAX_TEXT && isCustomary(reader.build)) this.#kept.set(text, reader);
    return reader;
  }

  clear(): void {
    this.#kept.clear();
  }
}

function newReader(input: unknown): CurveReader {
  const build = readBuildAt("build", input);
  return new CurveReader(build, new ResponseEngine(build, { isKept: true }));
}
