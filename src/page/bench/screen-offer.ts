import type { SheetAnswer } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import type { BuildSource } from "../state/reading.ts";

/** A build's wire that the sheet cuts from a screened reel, by its place among the wires, and the metres cut. */
interface Screened {
  readonly index: number;
  readonly metres: number;
}

function isSaid(source: BuildSource, index: number): boolean {
  const wire = source.wires[index];
  return wire !== undefined && "from" in wire && (wire as { kind?: unknown }).kind === "screened";
}

function screenedIn({ cuts, pieces }: SheetAnswer, source: BuildSource): Screened[] {
  return cuts
    .filter(({ kind, means }) => kind === "screened" && means !== "braid")
    .flatMap(({ wire, cut }) => {
      const piece = pieces.find(({ number }) => number === wire)!;
      return piece.wires.slice(0, 1).map((number) => ({ index: number - 1, metres: cut }));
    })
    .filter(({ index }) => source.wires[index] !== undefined && !isSaid(source, index));
}

function withScreens(source: BuildSource, screened: readonly Screened[]): BuildSource {
  const wires = source.wires.map((wire, index) => {
    const own = screened.find((each) => each.index === index);
    if (!own) return wire;
    const { from, to, ...rest } = "from" in wire ? (wire as Record<string, unknown>) : { from: wire[0], to: wire[1] };
    return { length: `${Math.round(own.metres * 1000)}mm`, ...rest, from, to, kind: "screened" };
  });
  return { ...source, wires: wires as BuildSource["wires"] };
}

/** Offers to say in the guard itself which wires are screened, so that their capacitance is heard; nothing where it says so. */
export function screenOffer(
  sheet: SheetAnswer,
  source: BuildSource,
  rework: (change: (source: BuildSource) => BuildSource) => void,
): HTMLElement | false {
  const screened = screenedIn(sheet, source);
  if (screened.length === 0) return false;
  const metres = screened.reduce((sum, each) => sum + each.metres, 0);
  return h(
    "p",
    { class: "hint no-print" },
    `The sheet takes ${Math.round(metres * 100)} cm of screened wire, whose capacitance the curve does not have yet. `,
    h(
      "button",
      { type: "button", onclick: () => rework((now) => withScreens(now, screened)) },
      "Put it into the guard",
    ),
  );
}
