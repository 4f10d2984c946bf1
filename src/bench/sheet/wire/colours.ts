import { detailsOf } from "../../../build-file/connections.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { WireKind } from "../../../build-file/wire-kinds.ts";
import { Wiring } from "../../../wiring/nets.ts";
import { partOf } from "../pieces/loose-ends.ts";
import { isCutPiece, type Piece } from "../pieces/piece.ts";
import type { Reel } from "./reels.ts";
import type { KindsWanted } from "./wire-kinds.ts";

/** Where a person names no reels: two are enough, and every kit has them. */
const USUAL_REELS = { hot: ["white"], ground: ["black"] } as const;
/** Colours that pass for ground on any bench; what else there is goes to whatever is hot. */
const GROUND_COLOURS: readonly string[] = ["black", "green", "brown", "grey", "bare"];
/** Against a build that gives all of them to the other side. */
const FURTHER = { hot: ["white", "yellow", "red"], ground: ["black", "green", "brown", "grey"] } as const;

export interface WireColours {
  /** Colour and kind of every piece that is cut, by its number. */
  readonly byPiece: ReadonlyMap<number, { readonly colour: string; readonly kind: WireKind }>;
  /** Colours that have to serve both for ground and for something hot. */
  readonly clashes: readonly string[];
}

type Side = "hot" | "ground";

const lower = (colour: string) => colour.trim().toLowerCase();

/** Which nets are ground, by lug. */
export function sideOf(build: Build): (lug: string) => { side: Side; net: number } {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const netOf = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)]!;
  const ground = netOf(`${partsOfKind(build, "jack")[0]![0]}.sleeve`);
  return (lug) => ({ side: netOf(lug) === ground ? "ground" : "hot", net: netOf(lug) });
}

/** The colour that the build's own wires give a piece; none for one that stands for several differently coloured. */
function givenTo(build: Build, { wires }: Piece): string | undefined {
  const colours = wires.flatMap((number) => detailsOf(build.wires[number - 1]!).colour ?? []).map(lower);
  return colours.every((colour) => colour === colours[0]) ? colours[0] : undefined;
}

/** The colours of each side: reels that pass for ground on that side, if there are any, and the others on the hot one. */
function palettes(reels: readonly Reel[], onHot: ReadonlySet<string>, onGround: ReadonlySet<string>) {
  const insulated = [...new Set(reels.filter(({ kind }) => kind !== "bare").map(({ colour }) => lower(colour)))];
  if (insulated.length === 0) {
    const free = (colours: readonly string[], taken: ReadonlySet<string>) => colours.filter((each) => !taken.has(each));
    return {
      ground: [...free([...USUAL_REELS.ground, ...FURTHER.ground], onHot), "bare in sleeving"].slice(0, 1),
      hot: [...free([...USUAL_REELS.hot, ...FURTHER.hot], onGround), "clear"].slice(0, 1),
    };
  }
  const dark = insulated.filter((colour) => GROUND_COLOURS.includes(colour) && !onHot.has(colour));
  const ground = dark[0] ?? insulated.find((colour) => !onHot.has(colour)) ?? insulated[0]!;
  const hot = insulated.filter((colour) => colour !== ground && !onGround.has(colour));
  return { ground: [ground], hot: hot.length > 0 ? hot : [ground] };
}

/** The kind that the build's own wires say. */
function kindGiven(build: Build, { wires }: Piece): WireKind | undefined {
  return wires.map((number) => detailsOf(build.wires[number - 1]!).kind).find((kind) => kind !== undefined);
}

function usualKind(
  { means, stops }: Piece,
  side: Side,
  kinds: KindsWanted,
  isJack: (lug: string) => boolean,
): WireKind {
  if (means === "bus wire") return "bare";
  if (means === "braid") return "screened";
  if (side === "ground") return kinds.ground;
  return stops.some(isJack) ? kinds.jack : kinds.hot;
}

/** The reels that a person has; one who names none may have any. */
class Owned {
  readonly #reels: readonly Reel[];

  constructor(reels: readonly Reel[]) {
    this.#reels = reels.map((reel) => ({ ...reel, colour: lower(reel.colour) }));
  }

  mayHave(kind: WireKind): boolean {
    return this.#reels.length === 0 || this.#reels.some((reel) => reel.kind === kind);
  }

  /** Those of the colours that there is a reel of this kind of; all where there is none. */
  ofKind(colours: readonly string[], kind: WireKind): readonly string[] {
    const own = colours.filter((colour) => this.#reels.some((reel) => reel.colour === colour && reel.kind === kind));
    return own.length > 0 ? own : colours;
  }

  /** The kind wanted, or what else there is of a colour. */
  kindOf(colour: string, wanted: WireKind): WireKind {
    const own = this.#reels.filter((reel) => reel.colour === colour).map(({ kind }) => kind);
    return own.length === 0 || own.includes(wanted) ? wanted : own[0]!;
  }
}

/**
 * A colour and a kind for every piece that is cut: one colour for ground and never that one elsewhere, and the hot nets in turn
 * through what other reels there are. Colours that the build names are kept, and kept off the other side.
 */
export function coloursOf(
  build: Build,
  pieces: readonly Piece[],
  reels: readonly Reel[],
  kinds: KindsWanted,
): WireColours {
  const sides = sideOf(build);
  const cut = pieces.filter(isCutPiece).map((piece) => ({
    piece,
    ...sides(piece.stops[0]!),
    given: givenTo(build, piece),
  }));
  const givenOn = (wanted: Side) =>
    new Set(cut.filter(({ side }) => side === wanted).flatMap(({ given }) => given ?? []));
  const [onHot, onGround] = [givenOn("hot"), givenOn("ground")];
  const palette = palettes(reels, onHot, onGround);
  const hotNets = [...new Set(cut.filter(({ side }) => side === "hot").map(({ net }) => net))];
  const isJack = (lug: string) => build.parts[partOf(lug)]!.kind === "jack";
  const owned = new Owned(reels);
  const byPiece = new Map(
    cut.map(({ piece, side, net, given }) => {
      const said = kindGiven(build, piece);
      const wanted = said ?? usualKind(piece, side, kinds, isJack);
      const turn = side === "hot" ? hotNets.indexOf(net) : 0;
      const isBare = wanted === "bare" && side === "ground" && owned.mayHave("bare");
      const fitting = owned.ofKind(palette[side], wanted);
      const colour = given ?? (isBare ? "bare" : fitting[turn % fitting.length]!);
      const isFixed = said !== undefined || piece.means === "braid" || isBare;
      return [piece.number, { colour, kind: isFixed ? wanted : owned.kindOf(colour, wanted) }] as const;
    }),
  );
  const used = (wanted: Side) =>
    new Set(cut.filter(({ side }) => side === wanted).map(({ piece }) => byPiece.get(piece.number)!.colour));
  const grounds = used("ground");
  return { byPiece, clashes: [...used("hot")].filter((colour) => grounds.has(colour)) };
}
