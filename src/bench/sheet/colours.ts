import { type Connection, detailsOf } from "../../build-file/connections.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Wiring } from "../../wiring/nets.ts";

/** Light and strong colours for whatever may be hot; none of them can pass for a ground colour. */
const HOT_COLOURS = ["white", "yellow", "red", "blue", "orange", "pink"] as const;
const GROUND_COLOURS = ["black", "green", "brown", "grey"] as const;

export interface Colours {
  /** The colour of each connection that is cut from a reel, by its number. */
  readonly byConnection: ReadonlyMap<number, string>;
  /** Colours that the build itself gives both to ground and to something hot. */
  readonly clashes: readonly string[];
}

function lower(colour: string | undefined): string | undefined {
  return colour?.trim().toLowerCase();
}

/**
 * Colours every cut wire: one for ground and never that one elsewhere, and the hot nets in turn. Colours that the build names
 * are kept, and kept out of the other side's palette.
 */
export function coloursOf(build: Build, cut: readonly Connection[]): Colours {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const netOf = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)]!;
  const ground = netOf(`${partsOfKind(build, "jack")[0]![0]}.sleeve`);
  const given = (connection: Connection) => lower(detailsOf(build.wires[connection.number - 1]!).colour);
  const givenTo = (wantsGround: boolean) =>
    new Set(cut.filter(({ from }) => (netOf(from) === ground) === wantsGround).flatMap((each) => given(each) ?? []));
  const [onGround, onHot] = [givenTo(true), givenTo(false)];
  const groundColour = GROUND_COLOURS.find((colour) => !onHot.has(colour)) ?? "bare in black sleeving";
  const palette = HOT_COLOURS.filter((colour) => !onGround.has(colour));
  const hotColours = palette.length > 0 ? palette : ["clear"];
  const hotNets = [...new Set(cut.map(({ from }) => netOf(from)).filter((net) => net !== ground))];
  const byConnection = new Map(
    cut.map((connection): [number, string] => {
      const net = netOf(connection.from);
      const usual = net === ground ? groundColour : hotColours[hotNets.indexOf(net) % hotColours.length]!;
      return [connection.number, given(connection) ?? usual];
    }),
  );
  return { byConnection, clashes: [...onGround].filter((colour) => onHot.has(colour)) };
}
