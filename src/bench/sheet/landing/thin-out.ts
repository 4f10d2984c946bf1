import type { Build } from "../../../build-file/schema.ts";
import { isCase, loosenessOf } from "../pieces/loose-ends.ts";
import { LugSets } from "../pieces/lug-sets.ts";
import { type Draft, solderedStops } from "../pieces/piece.ts";
import type { Reach } from "../wire/reach.ts";
import { sittingOf } from "./open-ends.ts";

/** One joint with too many ends. */
interface Crowd {
  readonly place: string;
  readonly drafts: readonly Draft[];
}

/** Counts ends by joint: a case has one for each sitting, every other place one for all. */
class Joints {
  readonly #build: Build;
  readonly #drafts: readonly Draft[];
  readonly #byKey = new Map<string, { place: string; drafts: Draft[] }>();

  constructor(build: Build, drafts: readonly Draft[]) {
    this.#build = build;
    this.#drafts = drafts;
    for (const draft of drafts)
      for (const place of solderedStops(draft)) {
        const key = this.#key(place, draft);
        const joint = this.#byKey.get(key) ?? { place, drafts: [] };
        joint.drafts.push(draft);
        this.#byKey.set(key, joint);
      }
  }

  #key(place: string, draft: Draft): string {
    return isCase(this.#build, place) ? `${place} ${sittingOf(this.#build, draft)}` : place;
  }

  crowds(maxEnds: number): Crowd[] {
    return [...this.#byKey.values()].filter(({ drafts }) => drafts.length > maxEnds);
  }

  /** Fixed places of one net with room for one end more of a draft. */
  withRoom(draft: Draft, from: string, maxEnds: number): string[] {
    const own = new LugSets();
    for (const each of this.#drafts)
      if (each !== draft) for (const stop of each.stops.slice(1)) own.join(each.stops[0]!, stop);
    const far = draft.stops.filter((stop) => stop !== from);
    return [...new Set([...this.#byKey.values()].map(({ place }) => place))].filter((place) => {
      if (place === from || loosenessOf(this.#build, place) !== undefined || !own.areJoined(place, from)) return false;
      if (far.some((stop) => own.areJoined(stop, place))) return false;
      return (this.#byKey.get(this.#key(place, draft))?.drafts.length ?? 0) < maxEnds;
    });
  }
}

/** Moves one end away from a crowded place to where it gets least longer; false where there is none. */
function moveOne(joints: Joints, { place, drafts }: Crowd, reach: Reach, maxEnds: number): boolean {
  const moves = drafts
    .filter(({ means, stops }) => means !== "bent lug" && stops.length === 2)
    .flatMap((draft) =>
      joints.withRoom(draft, place, maxEnds).map((to) => {
        const other = draft.stops.find((stop) => stop !== place)!;
        return { draft, to, longer: reach.straight(other, to) - reach.straight(other, place) };
      }),
    );
  const [move] = moves.sort((a, b) => a.longer - b.longer);
  if (!move) return false;
  move.draft.stops = move.draft.stops.map((stop) => (stop === place ? move.to : stop));
  move.draft.insteadOf ??= place;
  return true;
}

/** Splices loose ends of a crowded place, and brings them there with one wire; the wire, or undefined where too few are loose. */
function spliceSome({ place, drafts }: Crowd, maxEnds: number): Draft | undefined {
  const loose = drafts
    .filter(({ grown, means, stops }) => grown && means !== "bent lug" && stops[0] !== place)
    .slice(0, maxEnds - 1);
  if (loose.length < 2) return undefined;
  const splice = loose[0]!.stops[0]!;
  for (const draft of loose) draft.stops = [draft.stops[0]!, splice];
  return { means: "wire", stops: [splice, place], grown: false, wires: [] };
}

/**
 * Takes ends away from every place with more than `maxEnds`: to another lug of the same net, else into a splice with one wire
 * onward. Changes the drafts given, and returns them with the wires that splices need.
 */
export function thinOut(build: Build, drafts: readonly Draft[], reach: Reach, maxEnds: number): Draft[] {
  const all = [...drafts];
  for (;;) {
    const joints = new Joints(build, all);
    const crowds = joints.crowds(maxEnds);
    if (crowds.some((crowd) => moveOne(joints, crowd, reach, maxEnds))) continue;
    const onward = crowds.map((crowd) => spliceSome(crowd, maxEnds)).find((wire) => wire !== undefined);
    if (!onward) return all;
    all.push(onward);
  }
}
