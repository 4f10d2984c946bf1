import type { Clearance } from "../../bench/room/clearances/clearance.ts";
import { extentOf, type Outline, type Point } from "../../bench/room/geometry/outline.ts";
import type { Measures } from "../../bench/room/measures.ts";
import type { RoomTold } from "../../bench/room/room.ts";
import { s } from "../dom/element.ts";

/** Millimetres about everything. */
const MARGIN = 8;

const VERDICT_CLASS: Readonly<Record<Clearance["verdict"], string>> = {
  "goes in": "goes-in",
  tight: "tight",
  "does not go in": "stuck",
  "not said": "open",
};

const mm = (metres: number) => Number((metres * 1000).toFixed(2));
const pathOf = (outline: Outline) => `M${outline.map(([x, y]) => `${mm(x)} ${mm(y)}`).join("L")}Z`;

/** The worst that is said of a part, whatever it is held to. */
function verdictFor(part: string, { clearances }: RoomTold): Clearance["verdict"] {
  return clearances.find((each) => each.part === part || each.against === part)?.verdict ?? "not said";
}

function tightest({ clearances }: RoomTold): SVGElement[] {
  const where = clearances.find((each) => each.where !== null)?.where;
  if (!where) return [];
  const [[x1, y1], [x2, y2]] = where;
  return [
    s("line", { class: "room-tightest", x1: mm(x1), y1: mm(y1), x2: mm(x2), y2: mm(y2) }),
    s("circle", { class: "room-tightest", cx: mm((x1 + x2) / 2), cy: mm((y1 + y2) / 2), r: 5 }),
  ];
}

function named(parts: readonly string[], told: RoomTold, words: ReadonlyMap<string, string>): SVGElement[] {
  return parts.map((part) => {
    const { low, high } = extentOf(
      told.shapes.filter((shape) => shape.part === part).flatMap(({ outline }) => outline),
    );
    return s(
      "text",
      { x: mm((low[0] + high[0]) / 2), y: mm((low[1] + high[1]) / 2) + 1.5, class: "room-name" },
      words.get(part) ?? part,
    );
  });
}

/** Cavities, parts and the tightest place from the front: the neck to the right, the treble side down, 1 unit a millimetre. */
export function roomPicture(
  { cavities, guard }: Measures,
  told: RoomTold,
  words: ReadonlyMap<string, string>,
): SVGSVGElement | undefined {
  const points: Point[] = [
    ...cavities.flatMap(({ outline }) => outline),
    ...told.shapes.flatMap(({ outline }) => outline),
    ...(guard.outline ?? []),
    ...(guard.screws ?? []),
  ];
  if (points.length === 0) return undefined;
  const { low, high } = extentOf(points);
  const [left, top] = [mm(low[0]) - MARGIN, mm(low[1]) - MARGIN];
  const [width, height] = [mm(high[0] - low[0]) + 2 * MARGIN, mm(high[1] - low[1]) + 2 * MARGIN];
  return s(
    "svg",
    {
      class: "room-picture",
      viewBox: `${left} ${top} ${width} ${height}`,
      role: "img",
      "aria-label": `The cavities and what lies in them, from the front: the neck to the right, the treble side down. ${told.text}`,
    },
    guard.outline && s("path", { class: "room-edge", d: pathOf(guard.outline) }),
    cavities.map(({ outline }) => s("path", { class: "room-hole", d: pathOf(outline) })),
    s("line", { class: "room-axis", x1: left, y1: 0, x2: left + width, y2: 0 }),
    told.shapes.map(({ part, what, outline }) =>
      s("path", { class: `room-shape ${what} ${VERDICT_CLASS[verdictFor(part, told)]}`, d: pathOf(outline) }),
    ),
    (guard.screws ?? []).map(([x, y]) => s("circle", { class: "room-screw", cx: mm(x), cy: mm(y), r: 1.5 })),
    named([...new Set(told.shapes.map(({ part }) => part))], told, words),
    tightest(told),
  );
}
