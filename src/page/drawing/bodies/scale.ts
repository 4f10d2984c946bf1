import { potBody, switchBody } from "../../../build-file/bodies/bodies-of.ts";
import type { Part } from "../../../build-file/schema.ts";

/** Drawing units a millimetre of a switch's body, so that its lugs and their names can be told apart. */
const SWITCH_SCALE = {
  "open-frame": 6,
  "in-line-mirrored": 8,
  "in-line-alike": 8,
  board: 7.6,
  box: 7,
  "mini-toggle": 7.4,
  slide: 7.4,
  ring: 7,
  block: 7,
} as const;
const JACK_SCALE = { open: 4.6, barrel: 6, box: 4.6 } as const;
const FULL_SIZE = 4.4;
const MINI = 5.6;
/** Room for six lugs behind the case. */
const PUSH_PULL = 7;

/** Drawing units a metre of a part: larger than life, and a small body more so than a large one. */
export function unitsPerMetreOf(part: Part): number {
  return 1000 * unitsPerMillimetre(part);
}

function unitsPerMillimetre(part: Part): number {
  switch (part.kind) {
    case "pot": {
      const isMini = ["mini", "stacked-mini"].includes(potBody(part));
      return part.drives ? PUSH_PULL : isMini ? MINI : FULL_SIZE;
    }
    case "switch":
      return part.type === "toggle-3" && switchBody(part) === "open-frame" ? 5.4 : SWITCH_SCALE[switchBody(part)];
    case "jack":
      return JACK_SCALE[part.body ?? "open"];
    default:
      return 5.6;
  }
}
