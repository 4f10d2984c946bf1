import { BoundedMap } from "../../bounded-map.ts";
import { logSpaced } from "../../response/frequencies.ts";
import { frequenciesText } from "../archive/curve-answer.ts";

export interface FrequencyList {
  readonly frequenciesHz: Float64Array;
  /** As an answer writes them in UTF-8, made when it is first wanted. */
  readonly text: () => Uint8Array;
}

interface Spacing {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/** A page asks at one spacing all the time; each takes some ten kilobytes. */
const MAX_SPACINGS = 8;

/** Frequencies as requests ask for them; those last asked for are kept, with their text, for the next turn of a knob. */
export class FrequencyLists {
  readonly #kept = new BoundedMap<string, FrequencyList>(MAX_SPACINGS);

  listOf(wanted: readonly number[] | Spacing): FrequencyList {
    if (!("count" in wanted)) return listed(Float64Array.from(wanted));
    const { from, to, count } = wanted;
    const key = `${from} ${to} ${count}`;
    const kept = this.#kept.get(key);
    if (kept) return kept;
    const list = listed(logSpaced(from, to, count));
    this.#kept.set(key, list);
    return list;
  }
}

function listed(frequenciesHz: Float64Array): FrequencyList {
  let text: Uint8Array | undefined;
  return {
    frequenciesHz,
    text: () => {
      text ??= frequenciesText(frequenciesHz);
      return text;
    },
  };
}
