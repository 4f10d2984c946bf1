import { type LayoutName, layoutOf } from "../../plans/layouts.ts";
import { type Guard, namesOf, partOf } from "../guard.ts";
import {
  groundNet,
  inPlanOrder,
  isTwoWay,
  type Pots,
  pickupsInOrder,
  potsByRole,
  type Roles,
  type SelectorType,
  selectorType,
} from "./roles.ts";

const COUNT_WORDS = ["no", "one", "two", "three", "four", "five", "six"];
const counted = (count: number, noun: string) => `${COUNT_WORDS[count] ?? count} ${noun}${count === 1 ? "" : "s"}`;

/** What a switch is that no plan has, in words; undefined for those that plans have. */
function strangeSwitch(guard: Guard): string | undefined {
  const part = namesOf(guard, "switch").find((name) => !selectorType(guard, name) && !isTwoWay(guard, name));
  if (part === undefined) return undefined;
  const { type } = partOf(guard, part, "switch");
  return type === undefined
    ? `${part} is a switch with contacts of its own`
    : `${part} is a switch of the type ${type}`;
}

function layoutFor(selector: SelectorType | undefined, pickups: number, pots: Pots): LayoutName | undefined {
  const tones = pots.tones.length;
  if (selector === undefined) return pickups === 1 ? "one-pickup" : undefined;
  if (selector === "toggle-3" && pickups === 2)
    return pots.volumes.length > 1 ? "toggle-3-two-volumes" : "toggle-3-one-volume";
  if (selector === "lever-5" && pickups === 3) return tones > 1 ? "lever-5-two-tone" : "lever-5-one-tone";
  if (selector === "lever-3" && pickups === 3) return "lever-3-two-tone";
  return selector === "lever-3" && pickups === 2 ? "lever-3-two-pickups" : undefined;
}

function whyNoLayout(guard: Guard, selectors: number, pickups: number): string {
  if (pickups > 3) return `It has ${counted(pickups, "pickup")}, and no plan has more than three.`;
  const strange = strangeSwitch(guard);
  if (selectors === 0 && strange)
    return `It has ${counted(pickups, "pickup")}, and ${strange}, by which no plan selects.`;
  if (selectors === 0)
    return `It has ${counted(pickups, "pickup")} and no selector switch, and every plan with more than one has a selector.`;
  return `No plan has ${counted(pickups, "pickup")} on such a selector.`;
}

/** The parts by their roles, or why no plan has such parts. */
export function rolesIn(guard: Guard): Roles | string {
  const pickups = pickupsInOrder(guard);
  const jacks = namesOf(guard, "jack");
  if (pickups.length === 0) return "It has no pickup.";
  if (jacks.length === 0) return "It has no output jack.";
  if (jacks.length > 1) return `It has ${counted(jacks.length, "output jack")}, and every plan has one.`;
  const selectors = namesOf(guard, "switch").filter((name) => selectorType(guard, name));
  if (selectors.length > 1) return `It has ${counted(selectors.length, "selector")}, and no plan has more than one.`;
  const ground = groundNet(guard);
  const pots = potsByRole(guard, ground);
  if (pots.volumes.length === 0) return "It has no volume pot, and every plan has one.";
  const [selector] = selectors;
  const type = selector === undefined ? undefined : selectorType(guard, selector);
  const layout = layoutFor(type, pickups.length, pots);
  if (!layout) return whyNoLayout(guard, selectors.length, pickups.length);
  const { volumes, tones } = layoutOf(layout);
  return {
    layout,
    selector,
    pickups,
    volumes: inPlanOrder(pots.volumes, "volume").slice(0, volumes),
    tones: inPlanOrder(pots.tones, "tone").slice(0, tones.max),
    jack: jacks[0]!,
    ground,
  };
}
