import { trackLugs } from "../../../build-file/lug-names.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { capitalised } from "../../../english.ts";
import type { Edit } from "../edits/edit.ts";
import { called, type Fault, type FaultKind } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** One place where resistance can come in, and what it is called there; the readings say how much it is. */
export interface ResistivePlace {
  readonly edit: (ohms: number) => Edit;
  /** All that would read the same. */
  readonly faults: (ohms: number) => readonly Fault[];
  /** The same where the readings do not say how much it is. */
  readonly unseen: readonly Fault[];
  /** Ohms that may be there and still change no reading of a pot at 10 or of a coil by more than its tolerance. */
  readonly unseenOhms: number;
}

/** A poor joint in a coil's way goes unnoticed among tolerances with so little; a pot's end leaks from 1 % of its track on. */
const UNSEEN = { joint: 50, end: 10e3 } as const;

const shown = (ohms: number) => showQuantity(ohms, "resistance", 2);

interface Naming {
  readonly kind: FaultKind;
  readonly lugs: readonly string[];
  readonly message: (ohms: string) => string;
  readonly control?: string;
}

function place(
  edit: ResistivePlace["edit"],
  namings: readonly Naming[],
  unseenOhms: number = UNSEEN.joint,
): ResistivePlace {
  const named = ({ message, ...each }: Naming, ohms: string) => ({ ...each, message: message(ohms), edits: [] });
  return {
    edit,
    faults: (ohms) =>
      namings.map((naming) => ({ ...named(naming, `about ${shown(ohms)}`), edits: [edit(ohms)], ohms })),
    unseenOhms,
    unseen: namings.map((naming) => named(naming, "some resistance that does not show here")),
  };
}

function ofWires({ wires, nameAt }: GuardWiring): ResistivePlace[] {
  return wires.map(({ from, to }, wire) => {
    const lugs = [nameAt(from), nameAt(to)];
    const message = (ohms: string) =>
      `The connection from ${lugs[0]} to ${lugs[1]} has ${ohms} in it: a cold joint at either end, or few strands left. Heat both joints again until the solder flows.`;
    return place((ohms) => ({ edit: "resist-wire", wire, ohms }), [{ kind: "joint-resistive", lugs, message }]);
  });
}

function ofShared({ wires, nameAt, wiresAt }: GuardWiring): ResistivePlace[] {
  const lugs = [...new Set(wires.flatMap(({ from, to }) => [from, to]))];
  return lugs
    .filter((lug) => wiresAt(lug) > 1)
    .map((lug) => {
      const name = nameAt(lug);
      const message = (ohms: string) =>
        `The joint at ${name} is cold: its wires hold together but meet the lug through ${ohms}. Heat it again until the solder flows.`;
      return place((ohms) => ({ edit: "resist-lug", lug, ohms }), [{ kind: "joint-resistive", lugs: [name], message }]);
    });
}

/** A pot's wiper that hardly touches its track, and an end of the track that the wiper does not quite reach. */
function ofPots({ build, lug, wiresAt }: GuardWiring): ResistivePlace[] {
  return partsOfKind(build, "pot").flatMap(([part]) => {
    const who = called(build, part);
    const [end, wiper] = trackLugs(part);
    const at = (name: string, unseen: number, naming: Omit<Naming, "lugs" | "control">): ResistivePlace[] => {
      const { index } = lug(name);
      if (wiresAt(index) === 0) return [];
      const edit = (ohms: number) => ({ edit: "resist-lug", lug: index, ohms }) as const;
      return [place(edit, [{ ...naming, lugs: [name], control: part }], unseen)];
    };
    return [
      ...at(wiper, UNSEEN.joint, {
        kind: "pot-wiper-worn",
        message: (ohms) =>
          `The wiper of ${who} has ${ohms} to its track: worn or dirty. Turn it from end to end twenty times, then measure again.`,
      }),
      ...at(end, UNSEEN.end, {
        kind: "pot-end-leaks",
        message: (ohms) =>
          `${capitalised(who)} leaks at its counter-clockwise end: there is ${ohms} between its wiper and that lug, and data sheets allow 1 % of the track.`,
      }),
    ];
  });
}

/** Every place where resistance can come in that belongs to no part. */
export function resistivePlaces(guard: GuardWiring): ResistivePlace[] {
  return [ofWires, ofShared, ofPots].flatMap((placesOf) => placesOf(guard));
}
