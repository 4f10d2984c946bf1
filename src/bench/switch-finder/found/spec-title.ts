import type { SwitchSpec } from "../../../build-file/switch-types.ts";
import { SWITCH_WORDS } from "../../../build-file/switch-words.ts";

const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? "" : "s"}`;

/** A known switch in the trade's words. */
export function specTitle({ type, poles = 1, throws = 2 }: SwitchSpec): string {
  if (type === undefined || type === "rotary")
    return `rotary switch, ${counted(poles, "pole")}, ${counted(throws, "position")}`;
  return SWITCH_WORDS[type];
}
