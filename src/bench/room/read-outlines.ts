import type { Build } from "../../build-file/schema.ts";
import { type InputFault, refused } from "../../errors.ts";
import { millimetresText } from "../../lengths.ts";
import type { Outline } from "./geometry/outline.ts";
import { areaOf, crossingOf } from "./geometry/polygon.ts";
import type { Measures, ShapeSaid } from "./measures.ts";

/** Square metres: a square millimetre is smaller than any hole that something goes into. */
const LEAST_AREA = 1e-6;

function faultsOfOutline(path: string, outline: Outline): InputFault[] {
  const crossing = crossingOf(outline);
  if (crossing) {
    const [one, other] = crossing.sides.map((side) => side + 1);
    const [x, y] = crossing.at.map(millimetresText);
    const message = `crosses or touches itself: its sides ${one} and ${other} meet at x ${x}, y ${y}; expected a line that closes without crossing`;
    return [{ path, message }];
  }
  if (areaOf(outline) >= LEAST_AREA) return [];
  return [{ path, message: "encloses nothing; expected at least three points that are not in one line" }];
}

const isOwnLine = (said: ShapeSaid | undefined): said is Outline => Array.isArray(said);

/** All lines that somebody drew, by where they stand in the request. */
function linesOf({ cavities, parts, guard }: Measures): (readonly [string, Outline])[] {
  return [
    ...cavities.map(({ outline }, index) => [`cavities.${index}.outline`, outline] as const),
    ...Object.entries(parts).flatMap(([name, { outline, hole }]) => [
      ...(isOwnLine(outline) ? [[`parts.${name}.outline`, outline] as const] : []),
      ...(isOwnLine(hole) ? [[`parts.${name}.hole`, hole] as const] : []),
    ]),
    ...(guard.outline ? [["guard.outline", guard.outline] as const] : []),
  ];
}

function unknownParts(build: Build, { cavities, parts }: Measures): InputFault[] {
  const unknown = (name: string) => !Object.hasOwn(build.parts, name);
  const message = (name: string) => `the build has no part "${name}"`;
  return [
    ...Object.keys(parts)
      .filter(unknown)
      .map((name) => ({ path: `parts.${name}`, message: message(name) })),
    ...cavities.flatMap(({ for: meant = [] }, index) =>
      meant.filter(unknown).map((name) => ({ path: `cavities.${index}.for`, message: message(name) })),
    ),
  ];
}

/** A clearance says by its name which cavity it is held to. */
function namesakes({ cavities }: Measures): InputFault[] {
  return cavities.flatMap(({ name }, index) =>
    cavities.findIndex((other) => other.name === name) < index
      ? [{ path: `cavities.${index}.name`, message: `"${name}" is there twice; expected a name for each` }]
      : [],
  );
}

/** @throws PresolderError REQUEST_INVALID for lines that cross themselves or enclose nothing, parts that are not there and namesakes */
export function checkMeasures(build: Build, measures: Measures): void {
  const faults = [
    ...unknownParts(build, measures),
    ...namesakes(measures),
    ...linesOf(measures).flatMap(([path, outline]) => faultsOfOutline(path, outline)),
  ];
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
}
