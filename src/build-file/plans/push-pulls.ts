import { contactLug, shaftSwitch } from "../lug-names.ts";
import type { Draft } from "./draft.ts";
import { beside, type Place } from "./places.ts";
import { knownName, planFault } from "./plan-fault.ts";
import type { Where } from "./plan-schema.ts";

/** One pole of a two-way switch: its common, and the lugs it rests on when down and when up. */
export interface Pole {
  readonly common: string;
  readonly down: string;
  readonly up: string;
  /** The case of the pot that carries it, the nearest ground; undefined on a switch of its own. */
  readonly potCase: string | undefined;
}

/** Hands out the poles of push-pull pots and of small switches; each has two. */
export class PushPulls {
  readonly #draft: Draft;
  readonly #pots: readonly string[];
  readonly #taken = new Map<string, number>();

  constructor(draft: Draft, pots: readonly string[]) {
    this.#draft = draft;
    this.#pots = pots;
  }

  /**
   * @param doing what they are for, as a small switch is called by it: "splits the bridge"
   * @throws PresolderError where there is no such pot, or its poles are already used.
   */
  poles(path: string, where: Where, count: 1 | 2, doing: string): Pole[] {
    const name = typeof where === "string" ? this.#onPot(path, where) : this.#ownSwitch(path, where.switch, doing);
    const taken = this.#taken.get(name) ?? 0;
    if (taken + count > 2)
      throw planFault(path, `this switch has two poles and ${taken} already in use; expected ${count} free`);
    this.#taken.set(name, taken + count);
    const potCase = typeof where === "string" ? `${where}.case` : undefined;
    return ["A", "B"].slice(taken, taken + count).map((letter) => ({
      common: contactLug(name, `${letter}0`),
      down: contactLug(name, `${letter}1`),
      up: contactLug(name, `${letter}2`),
      potCase,
    }));
  }

  #onPot(path: string, name: string): string {
    knownName(path, name, this.#pots, "pot");
    const pot = this.#draft.pot(name)!;
    pot.drives = "dpdt";
    return shaftSwitch(name);
  }

  #ownSwitch(path: string, name: string, doing: string): string {
    const part = this.#draft.parts[name];
    if (part && !this.#taken.has(name)) throw planFault(path, `the name "${name}" is already another part's`);
    if (part) part.label = `${part.label} and ${doing}`;
    else {
      const place = beside(this.#draft.pot(this.#pots[0]!)!.place as Place, { x: 0.03, y: 0.01 * this.#taken.size });
      this.#draft.part(name, { kind: "switch", type: "dpdt", label: `Small switch: ${doing}`, place });
    }
    return name;
  }
}
