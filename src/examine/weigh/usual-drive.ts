import { isHeard } from "../takes/heard.ts";
import type { Subject } from "./evidence.ts";
import { type Laid, strongestOf, type UsualDrive } from "./exciter-drive.ts";
import { ExciterEvidence } from "./exciter-evidence.ts";
import { STRAY_FIELD } from "./floor.ts";

/** Its strength is known to some such factor from the other placements, and a coil that needs many times that to be heard is none. */
const MOST_STRONGER = 10;
/** Under so many times what strays, a placement is heard by nothing else. */
const HEARD = 3;

/** Of full scale, under any noise. */
const NOTHING_TO_SPEAK_OF = 1e-9;

const total = (sizes: Float64Array) => Math.sqrt(sizes.reduce((sum, each) => sum + each * each, 0));

/** The strongest take of all placements, frequency by frequency; none where they were not recorded alike. */
export function loudestOf(laid: readonly Laid[]): Float64Array | undefined {
  const all = laid.map(({ takes }) => strongestOf(takes));
  if (all.some(({ length }) => length !== all[0]!.length)) return undefined;
  return all[0]?.map((_, i) => Math.max(...all.map((each) => each[i]!)));
}

/** A take that ought to be heard and is not bends the drive of all of them: the loudest speaks for it. */
function loudestAlone({ placement, takes }: Laid): Laid {
  const size = ({ take: { re, im } }: Laid["takes"][number]) => total(re.map((x, i) => Math.hypot(x, im[i]!)));
  return { placement, takes: [takes.reduce((best, each) => (size(each) > size(best) ? each : best))] };
}

const isHeardOver = (loudest: Float64Array, { takes }: Laid) =>
  takes.some(({ take }) => isHeard(take)) && total(strongestOf(takes)) > HEARD * STRAY_FIELD * total(loudest);

/**
 * What an exciter drives, were the guard as drawn: the middle placement's. One coil that the drawing hardly lets through speaks for a
 * drive beyond all measure, and one that is not heard for none. Where nothing is heard there is none: what it would take of the noise
 * speaks for no guard.
 */
export function usualDriveOf(laid: readonly Laid[], drawn: Subject): UsualDrive | undefined {
  const loudest = loudestOf(laid);
  if (!loudest) return undefined;
  const heard = laid.filter((each) => isHeardOver(loudest, each));
  const none = new Float64Array(loudest.length);
  if (heard.length === 0) return { re: none, im: none, most: NOTHING_TO_SPEAK_OF };
  const drives = heard
    .map((each) => new ExciterEvidence(loudestAlone(each)).driveOf(drawn))
    .filter(({ middle }) => middle > 0)
    .sort((a, b) => a.middle - b.middle);
  const usual = drives[Math.floor((drives.length - 1) / 2)];
  return usual && { re: usual.re, im: usual.im, most: MOST_STRONGER * usual.middle };
}
