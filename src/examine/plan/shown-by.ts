import { editBuild } from "../../bench/faults/edits/edit-build.ts";
import type { FaultKind } from "../../bench/faults/priors/fault-shares.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { Point, type Unknowns } from "../model/point.ts";
import { viewOf } from "../model/view.ts";
import type { Take } from "../takes/take.ts";
import type { Named } from "../weigh/candidates.ts";
import type { PlannedSetting } from "./plan.ts";
import { plannedTake } from "./planned-words.ts";

/** Of one sort so many are asked for, the likeliest; and so many settings are gone through. */
const [MOST_ASKED, MOST_SETTINGS] = [3, 12];

/** The same impedance either way. */
const SENSES: ReadonlySet<FaultKind> = new Set(["leads-swapped", "coil-leads-swapped"]);

const BY_EXCITER =
  "A small coil laid over each pickup shows these, or taps on its poles: at the jack alone they are the same.";
const BY_METER = "No take at the jack shows these; a meter between the two lugs does.";
const TOO_SLIGHT = "There would have to be more of it to show at the jack; a meter across the place shows it sooner.";

/**
 * What would show departures that these takes do not.
 * @param left takes of the plan that are not made yet
 */
export function showers(
  build: Build,
  unknowns: Unknowns,
  taken: readonly Take[],
  left: readonly PlannedSetting[],
  checkpoint: () => void,
): (members: readonly Named[]) => string | null {
  const nominal = new Point(unknowns);
  const drawn = new CircuitMaker(build);
  const known = new Map<Settings, string>();
  const drawnIn = (settings: Settings) => {
    const shape = known.get(settings) ?? viewOf(drawn, settings, nominal).shape;
    known.set(settings, shape);
    return shape;
  };
  return (members) => {
    const asked = members.filter(({ faults }) => faults.some(({ edits }) => edits.length > 0)).slice(0, MOST_ASKED);
    if (members.every(({ faults }) => faults.every(({ kind }) => SENSES.has(kind)))) return BY_EXCITER;
    if (asked.length === 0) return TOO_SLIGHT;
    const makers = asked.map(({ faults }) => {
      checkpoint();
      return new CircuitMaker(
        editBuild(
          build,
          faults.flatMap(({ edits }) => edits),
        ),
      );
    });
    const isSeenIn = (settings: Settings) => (maker: CircuitMaker) =>
      viewOf(maker, settings, nominal).shape !== drawnIn(settings);
    let best: { planned: PlannedSetting; count: number } | undefined;
    for (const planned of left.slice(0, MOST_SETTINGS)) {
      checkpoint();
      const count = makers.filter(isSeenIn(planned.settings)).length;
      if (count > (best?.count ?? 0)) best = { planned, count };
      if (count === makers.length) break;
    }
    if (best)
      return `The take with ${plannedTake(build, best.planned).title} shows ${best.count === makers.length ? "these" : "most of these"}.`;
    return taken.some(({ settings }) => makers.some(isSeenIn(settings))) ? TOO_SLIGHT : BY_METER;
  };
}
