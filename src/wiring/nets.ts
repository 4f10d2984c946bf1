import { BoundedMap } from "../bounded-map.ts";
import { LugTable, type SwitchControl, switchControls } from "../build-file/lugs.ts";
import type { Build } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import { DisjointSets } from "../disjoint-sets.ts";
import { type ContactPairs, contactPairs } from "./contacts.ts";

/** Which lugs are one net in a given setting. */
export interface Nets {
  /** Net number of each lug, by the lug's index in the table; 0 … count − 1. */
  readonly netOfLug: Int32Array;
  readonly count: number;
}

interface SwitchContacts {
  readonly control: SwitchControl;
  readonly pairs: ContactPairs;
}

/** Five positions by a few push-pulls, many times over. */
const MAX_KNOWN = 256;

/**
 * The wiring of a build: lugs joined by wires always, and by switch contacts according to the setting. A contact joins its
 * lugs outright; no small resistance stands in for it.
 */
export class Wiring {
  readonly lugs: LugTable;
  readonly #wired: DisjointSets;
  readonly #contacts: readonly SwitchContacts[];
  /** A guard has few switch settings, and every dial setting asks for the nets of one of them again. */
  readonly #known = new BoundedMap<string, Nets>(MAX_KNOWN);

  constructor(build: Build) {
    this.lugs = new LugTable(build.parts);
    this.#wired = new DisjointSets(this.lugs.lugs.length);
    for (const wire of build.wires) this.#wired.join(this.lugs.indexOf(wire.from), this.lugs.indexOf(wire.to));
    this.#contacts = switchControls(build.parts).map((control) => ({
      control,
      pairs: contactPairs(control, this.lugs),
    }));
  }

  /** The nets that wires alone make, whatever the switches do. */
  wiredNets(): Nets {
    const { labels, count } = this.#wired.labels();
    return { netOfLug: labels, count };
  }

  /** The nets with every switch in its position. */
  netsIn(settings: Settings): Nets {
    const key = this.#contacts.map(({ control }) => settings.switches[control.name] ?? 1).join();
    const known = this.#known.get(key);
    if (known) return known;
    const nets = this.#join(settings);
    this.#known.set(key, nets);
    return nets;
  }

  /** A net for every lug alone, and beside them the pairs that the switches' contacts join in a setting. */
  lugsIn(settings: Settings): { readonly nets: Nets; readonly contacts: readonly (readonly [number, number])[] } {
    const count = this.lugs.lugs.length;
    const contacts = this.#contacts.flatMap(
      ({ control, pairs }) => pairs[(settings.switches[control.name] ?? 1) - 1] ?? [],
    );
    return { nets: { netOfLug: Int32Array.from({ length: count }, (_, lug) => lug), count }, contacts };
  }

  #join(settings: Settings): Nets {
    const joined = new DisjointSets(this.#wired);
    for (const { control, pairs } of this.#contacts) {
      for (const [a, b] of pairs[(settings.switches[control.name] ?? 1) - 1] ?? []) joined.join(a, b);
    }
    const { labels, count } = joined.labels();
    return { netOfLug: labels, count };
  }
}
