import { hasCoilLeads } from "../lug-names.ts";
import { type LayoutName, layoutOf } from "../plans/layouts.ts";
import { isReversed } from "../plans/plan-pickups.ts";
import { type SwitchType, switchTable } from "../switch-types.ts";
import { type Guard, namesOf, netAt, partOf } from "./guard.ts";
import { same } from "./same.ts";
import { type BleedSketch, type Option, type Sketch, specOf, type ToneSketch } from "./sketch.ts";

const SELECTORS = ["lever-5", "lever-3", "toggle-3"] as const satisfies SwitchType[];
type SelectorType = (typeof SELECTORS)[number];

/** Which of the plans' selectors a switch is, by its contacts; undefined where it is none. */
function selectorType(guard: Guard, name: string): SelectorType | undefined {
  const table = switchTable(partOf(guard, name, "switch"));
  return SELECTORS.find((type) => same(switchTable({ type }).positions, table.positions));
}

/** A small switch of two poles, such as plans use for their options. */
export function isTwoWay(guard: Guard, name: string): boolean {
  return same(switchTable(partOf(guard, name, "switch")).positions, switchTable({ type: "dpdt" }).positions);
}

/** Items whose names are the plan's own stand in the plan's order, others as they come. */
function inPlanOrder(names: readonly string[], base: string): string[] {
  const planned = names.map((_, i) => (names.length === 1 ? base : `${base}${i + 1}`));
  return planned.every((name) => names.includes(name)) ? planned : [...names];
}

const USUAL_NAMES = ["bridge", "middle", "neck"];

/** Pickups from the bridge to the neck: by their distances, else by their names, else by where they sit on the guard. */
function pickupsInOrder(guard: Guard): string[] {
  const names = namesOf(guard, "pickup");
  const far = (name: string) => {
    const coils = Object.values(partOf(guard, name, "pickup").coils);
    return coils.reduce((sum, coil) => sum + (coil.distance ?? Number.NaN), 0) / coils.length;
  };
  const keys = [far, (name: string) => (USUAL_NAMES.includes(name) ? USUAL_NAMES.indexOf(name) : Number.NaN)];
  keys.push((name) => partOf(guard, name, "pickup").place?.x ?? Number.NaN);
  const key = keys.find((candidate) => names.every((name) => Number.isFinite(candidate(name))));
  return key ? [...names].sort((a, b) => key(a) - key(b)) : names;
}

/** The net that most of what is always grounded lies in. */
export function groundNet(guard: Guard): number {
  const votes = new Map<number, number>();
  for (const { name, local, part } of guard.table.lugs) {
    const kind = guard.build.parts[part]!.kind;
    if (local !== "sleeve" && local !== "case" && local !== "shield" && kind !== "terminal") continue;
    const net = netAt(guard, name);
    votes.set(net, (votes.get(net) ?? 0) + 1);
  }
  return [...votes].sort(([, a], [, b]) => b - a)[0]?.[0] ?? -1;
}

/** Whether a cap from one of the pot's first lugs leads to ground, or its wiper does behind a cap, as with tones. */
function isToneByNets(guard: Guard, pot: string, ground: number): boolean {
  const ends = [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.2`)].filter((net) => net !== ground);
  return namesOf(guard, "cap").some((cap) => {
    const [a, b] = [netAt(guard, `${cap}.a`), netAt(guard, `${cap}.b`)];
    return (a === ground && ends.includes(b)) || (b === ground && ends.includes(a));
  });
}

interface Pots {
  readonly volumes: readonly string[];
  readonly tones: readonly string[];
}

function potsByRole(guard: Guard, ground: number): Pots {
  const roles = namesOf(guard, "pot").map((name) => {
    const { role } = partOf(guard, name, "pot");
    return { name, role: role ?? (isToneByNets(guard, name, ground) ? "tone" : "volume") };
  });
  const named = (role: string) => roles.filter((pot) => pot.role === role).map(({ name }) => name);
  return { volumes: named("volume"), tones: named("tone") };
}

/** The guard's parts by what a plan would use them for. */
export interface Roles extends Pots {
  readonly layout: LayoutName;
  readonly selector: string | undefined;
  readonly pickups: readonly string[];
  readonly jack: string;
  readonly ground: number;
}

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
    return `It has ${counted(pickups, "pickup")}, ${strange}, and no plan selects by one.`;
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

/** With one pickup its plan may call it anything: by the place where it lies, if it lies in a usual one, else by its own name. */
function onePickupName(guard: Guard, name: string): string {
  const usual = USUAL_NAMES.filter((position) => {
    const spec = specOf(guard, "one-pickup", position, name);
    return typeof spec === "string" || !JSON.stringify(spec).includes('"distance"');
  });
  return usual.includes(name) ? name : (usual[0] ?? name);
}

function planPickups(guard: Guard, { layout, pickups }: Roles): Record<string, string> {
  const { pickups: names, selector } = layoutOf(layout);
  if (selector === "none") return { [onePickupName(guard, pickups[0]!)]: pickups[0]! };
  return Object.fromEntries([...names].reverse().map((planName) => [planName, pickups[names.indexOf(planName)]!]));
}

/** Nets at which the signal can be tapped. */
interface Signal {
  readonly selected: number;
  readonly output: number;
  /** Each pickup's throw on the signal pole, and on the other pole. */
  readonly throws: Readonly<Record<string, number>>;
  readonly toneThrows: Readonly<Record<string, number>>;
}

/** The throw of each pickup on a lever's pole, by the plan's names. */
export const THROWS: Readonly<Record<string, number>> = { bridge: 1, middle: 2, neck: 3 };

function signalOf(guard: Guard, roles: Roles, pickups: Readonly<Record<string, string>>): Signal {
  const volume = roles.volumes[0]!;
  const output = netAt(guard, `${roles.jack}.tip`);
  const none = { selected: netAt(guard, `${volume}.3`), output, throws: {}, toneThrows: {} };
  const { selector } = roles;
  if (selector === undefined) return none;
  if (layoutOf(roles.layout).selector === "toggle-3") {
    const throws = { bridge: netAt(guard, `${selector}.A1`), neck: netAt(guard, `${selector}.A2`) };
    return { ...none, selected: netAt(guard, `${selector}.A0`), throws };
  }
  const leads = new Set(
    Object.values(pickups).flatMap((name) =>
      guard.table.lugs.filter(({ part }) => part === name).map((lug) => netAt(guard, lug.name)),
    ),
  );
  const fed = (throws: Readonly<Record<string, number>>) =>
    Object.values(throws).filter((net) => leads.has(net)).length;
  if (layoutOf(roles.layout).selector === "lever-3-pair") {
    const pairs = ["AB", "BA"].map(([one, other]) => ({
      bridge: netAt(guard, `${selector}.${one}1`),
      neck: netAt(guard, `${selector}.${other}3`),
    }));
    const throws = fed(pairs[0]!) >= fed(pairs[1]!) ? pairs[0]! : pairs[1]!;
    return { ...none, selected: netAt(guard, `${selector}.A0`), throws };
  }
  const throwsOf = (pole: string) =>
    Object.fromEntries(
      Object.entries(THROWS).map(([pickup, number]) => [pickup, netAt(guard, `${selector}.${pole}${number}`)]),
    );
  const [a, b] = [throwsOf("A"), throwsOf("B")];
  const isOnA = fed(a) >= fed(b);
  return {
    output,
    selected: netAt(guard, `${selector}.${isOnA ? "A" : "B"}0`),
    throws: isOnA ? a : b,
    toneThrows: isOnA ? b : a,
  };
}

/** The coil nearest the hot lead, by the joint between the coils; undefined where no joint shows it. */
function upperCoil(guard: Guard, name: string): { coil: string; joint: number } | undefined {
  const pickup = partOf(guard, name, "pickup");
  if (!hasCoilLeads(pickup)) return undefined;
  const leads = Object.entries(pickup.coils).map(([coil, values]) => {
    const [hot, ground] = isReversed(values) ? ["start", "finish"] : ["finish", "start"];
    return { coil, hot: netAt(guard, `${name}.${coil}.${hot}`), ground: netAt(guard, `${name}.${coil}.${ground}`) };
  });
  const [first, second] = leads as [(typeof leads)[0], (typeof leads)[0]];
  if (first.ground === second.hot) return { coil: first.coil, joint: first.ground };
  return second.ground === first.hot ? { coil: second.coil, joint: second.ground } : undefined;
}

/** The coil that a split would keep: as wired, else the first. */
export function keptCoil(guard: Guard, name: string): string {
  return upperCoil(guard, name)?.coil ?? Object.keys(partOf(guard, name, "pickup").coils)[0]!;
}

/** Splits that the lever's other pole makes. */
function automaticSplits(
  guard: Guard,
  roles: Roles,
  pickups: Readonly<Record<string, string>>,
  signal: Signal,
): Option[] {
  if (layoutOf(roles.layout).selector !== "lever-5") return [];
  return ["bridge", "neck"].flatMap((pickup): Option[] => {
    const upper = upperCoil(guard, pickups[pickup]!);
    if (!upper || upper.joint === roles.ground || upper.joint !== signal.toneThrows[pickup]) return [];
    return [{ kind: "automatic", pickup, keeps: upper.coil }];
  });
}

const legNets = (guard: Guard, part: string): [number, number] => [
  netAt(guard, `${part}.a`),
  netAt(guard, `${part}.b`),
];

/** A tone's cap and the net that feeds the two, whichever comes first and whichever way round. */
function toneRow(guard: Guard, pot: string, cap: string, ground: number): { feed: number } | undefined {
  const ends = [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.2`)];
  for (const middle of ends) {
    if (middle === ground) continue;
    const legs = legNets(guard, cap);
    if (!legs.includes(middle)) continue;
    const rest = [ends[1 - ends.indexOf(middle)]!, legs[1 - legs.indexOf(middle)]!];
    if (rest.includes(ground)) return { feed: rest[0] === ground ? rest[1]! : rest[0]! };
  }
  return undefined;
}

interface ReadTone {
  readonly pot: string;
  readonly cap: string | undefined;
  readonly feed: number;
}

function readTones(guard: Guard, roles: Roles): ReadTone[] {
  const caps = namesOf(guard, "cap");
  const volumeNets = new Set(roles.volumes.flatMap((name) => [netAt(guard, `${name}.2`), netAt(guard, `${name}.3`)]));
  const isBleed = (cap: string) => legNets(guard, cap).every((net) => volumeNets.has(net));
  const tones = roles.tones.map((pot) => {
    const cap = caps.find((each) => toneRow(guard, pot, each, roles.ground));
    return {
      pot,
      cap,
      feed: cap === undefined ? netAt(guard, `${pot}.1`) : toneRow(guard, pot, cap, roles.ground)!.feed,
    };
  });
  const free = () => caps.filter((cap) => !isBleed(cap) && !tones.some((tone) => tone.cap === cap));
  for (const [i, tone] of tones.entries()) {
    if (tone.cap !== undefined) continue;
    const usual = tones.length === 1 ? "cap" : `cap${i + 1}`;
    const touching = free().find((cap) => legNets(guard, cap).includes(netAt(guard, `${tone.pot}.2`)));
    tone.cap = touching ?? free().find((cap) => cap === usual) ?? free().find((cap) => !cap.startsWith("bleed"));
  }
  return tones;
}

interface FedTones {
  readonly tones: ToneSketch[];
  readonly sharedCap: string | undefined;
  readonly toneFeed: Sketch["toneFeed"];
}

function fedTones(
  guard: Guard,
  roles: Roles,
  read: readonly ReadTone[],
  signal: Signal,
  owners: Sketch["volumes"],
  hasToneThrows: boolean,
): FedTones {
  let isAfter = false;
  const neckFirst = [...layoutOf(roles.layout).pickups].reverse();
  const toneCommon = roles.selector === undefined ? -1 : otherCommon(guard, roles.selector, signal);
  const tones = read.map(({ pot, cap, feed }): ToneSketch => {
    const at = (nets: Readonly<Record<string, number>>) => neckFirst.filter((pickup) => nets[pickup] === feed);
    for (const { pot: volume, pickup } of owners) {
      if (pickup === undefined || feed === signal.selected) continue;
      const nets = [netAt(guard, `${volume}.3`), netAt(guard, `${volume}.2`)];
      if (nets.includes(feed)) return { pot, cap, pickups: [pickup] };
    }
    const picked = hasToneThrows ? at(signal.toneThrows) : [];
    if (picked.length > 0) {
      isAfter ||= toneCommon === signal.output && toneCommon !== signal.selected;
      return { pot, cap, pickups: picked.length === neckFirst.length ? [] : picked };
    }
    if (feed !== signal.selected && feed === signal.output) isAfter = true;
    return { pot, cap, pickups: feed === signal.selected || feed === signal.output ? [] : at(signal.throws) };
  });
  const [first, second] = read;
  const isShared = second !== undefined && first!.cap !== undefined && first!.cap === second.cap;
  return { tones, sharedCap: isShared ? first!.cap : undefined, toneFeed: isAfter ? "after-volume" : "before-volume" };
}

/** The net of the pole that does not carry the signal. */
function otherCommon(guard: Guard, selector: string, signal: Signal): number {
  const commons = ["A", "B"].map((pole) => ({ pole, throws: netAt(guard, `${selector}.${pole}1`) }));
  const other = commons.find(({ throws }) => throws === signal.toneThrows.bridge);
  return other ? netAt(guard, `${selector}.${other.pole}0`) : -1;
}

const sameNets = (a: readonly number[], b: readonly number[]) =>
  (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);

/** The cap, and the resistor with it, from a volume's input to its output. */
function bleedAt(
  guard: Guard,
  volume: string,
  caps: readonly string[],
): { cap: string; resistor?: string; how: BleedSketch["how"] } | undefined {
  const ends = [netAt(guard, `${volume}.2`), netAt(guard, `${volume}.3`)];
  const resistors = namesOf(guard, "resistor");
  for (const cap of caps) {
    const legs = legNets(guard, cap);
    if (sameNets(legs, ends)) {
      const resistor = resistors.find((name) => sameNets(legNets(guard, name), ends));
      return resistor === undefined ? { cap, how: "alone" } : { cap, resistor, how: "parallel" };
    }
    const near = legs.find((net) => ends.includes(net));
    if (near === undefined) continue;
    const middle = legs[1 - legs.indexOf(near)]!;
    const far = ends[1 - ends.indexOf(near)]!;
    const resistor = resistors.find((name) => sameNets(legNets(guard, name), [middle, far]));
    if (resistor !== undefined) return { cap, resistor, how: "series" };
  }
  const touching = caps.find((cap) => legNets(guard, cap).some((net) => ends.includes(net)));
  return touching === undefined ? undefined : { cap: touching, how: "alone" };
}

function readBleed(guard: Guard, volumes: readonly string[], caps: readonly string[]): BleedSketch | undefined {
  const bleeds = volumes.map((volume) => bleedAt(guard, volume, caps));
  const how = bleeds.find((bleed) => bleed)?.how;
  if (!how) return undefined;
  return { how, caps: bleeds.map((bleed) => bleed?.cap), resistors: bleeds.map((bleed) => bleed?.resistor) };
}

/** Where the pickup of a volume's own input is; the neck's volume comes first unless the wires say otherwise. */
function owners(guard: Guard, roles: Roles, pickups: Readonly<Record<string, string>>): Sketch["volumes"] {
  if (layoutOf(roles.layout).volumes === 1) return [{ pot: roles.volumes[0]!, pickup: undefined }];
  const [first, second] = roles.volumes;
  const throwNet = (pickup: string) => netAt(guard, `${roles.selector}.${pickup === "bridge" ? "A1" : "A2"}`);
  const leads = (pickup: string) =>
    guard.table.lugs.filter(({ part }) => part === pickups[pickup]).map(({ name }) => netAt(guard, name));
  const serves = (pot: string | undefined, pickup: string) =>
    [2, 3].filter((lug) => {
      const net = netAt(guard, `${pot}.${lug}`);
      return net === throwNet(pickup) || leads(pickup).includes(net);
    }).length;
  const straight = serves(first, "neck") + serves(second, "bridge");
  const crossed = serves(first, "bridge") + serves(second, "neck");
  const names = crossed > straight ? ["bridge", "neck"] : ["neck", "bridge"];
  const isNamed = first === "volume1" && second === "volume2";
  const all = roles.volumes.map((pot, i) => ({ pot, pickup: names[i]! }));
  return isNamed || names[0] === "neck" ? all : all.reverse();
}

/** Tones in the plan's order where their names are the plan's, else as their pickups lie, the neck's first. */
function ordered(tones: readonly ToneSketch[], neckFirst: readonly string[]): ToneSketch[] {
  const isNamed = tones.every(({ pot }, i) => pot === (tones.length === 1 ? "tone" : `tone${i + 1}`));
  const place = ({ pickups }: ToneSketch) => (pickups.length === 0 ? neckFirst.length : neckFirst.indexOf(pickups[0]!));
  return isNamed ? [...tones] : [...tones].sort((a, b) => place(a) - place(b));
}

function terminal(guard: Guard, role: "claw" | "shield" | "ground"): string | undefined {
  return namesOf(guard, "terminal").find((name) => partOf(guard, name, "terminal").role === role);
}

function padded(tones: ToneSketch[], least: number): ToneSketch[] {
  const missing: ToneSketch = { pot: undefined, cap: undefined, pickups: [] };
  return [...tones, ...Array.from({ length: Math.max(0, least - tones.length) }, () => missing)];
}

/** Whether a resistor's hot end is anywhere near where a plan would put it. */
function isInPlace(guard: Guard, roles: Roles, part: string): boolean {
  const hot = legNets(guard, part).filter((net) => net !== roles.ground);
  const isNear = (name: string) => {
    const { kind } = guard.build.parts[name]!;
    return kind === "pickup" || kind === "switch" || roles.volumes.includes(name);
  };
  const acrossPot = [...roles.volumes, ...roles.tones].some((pot) =>
    sameNets(legNets(guard, part), [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.3`)]),
  );
  return acrossPot || guard.table.lugs.some((lug) => isNear(lug.part) && hot.includes(netAt(guard, lug.name)));
}

const MAX_RESISTORS = 6;

/** Resistors that are of no treble bleed, each across whatever its legs are nearest to. */
function readResistors(
  guard: Guard,
  roles: Roles,
  pickups: Readonly<Record<string, string>>,
  taken: readonly (string | undefined)[],
): Sketch["resistors"] {
  const free = namesOf(guard, "resistor").filter((name) => !taken.includes(name) && isInPlace(guard, roles, name));
  return inPlanOrder(free, "resistor")
    .slice(0, MAX_RESISTORS)
    .map((part) => {
      const hot = legNets(guard, part).filter((net) => net !== roles.ground);
      const pickup = Object.entries(pickups).find(([, name]) =>
        guard.table.lugs.some((lug) => lug.part === name && hot.includes(netAt(guard, lug.name))),
      );
      return { part, across: pickup ? { pickup: pickup[0] } : { pot: roles.volumes[0]! } };
    });
}

/** What the guard looks like at first sight, its push-pulls and small switches still without a purpose. */
export function firstReading(guard: Guard, roles: Roles): Sketch {
  const pickups = planPickups(guard, roles);
  const signal = signalOf(guard, roles, pickups);
  const volumes = owners(guard, roles, pickups);
  const automatic = automaticSplits(guard, roles, pickups, signal);
  const read = readTones(guard, roles);
  const { tones, sharedCap, toneFeed } = fedTones(guard, roles, read, signal, volumes, automatic.length === 0);
  const ofTones = new Set(read.map(({ cap }) => cap));
  const caps = namesOf(guard, "cap").filter((cap) => !ofTones.has(cap));
  const bleed = readBleed(
    guard,
    volumes.map(({ pot }) => pot!),
    caps,
  );
  const layout = layoutOf(roles.layout);
  return {
    layout: roles.layout,
    pickups,
    selector: roles.selector,
    volumes,
    independent: false,
    tones: padded(ordered(tones, [...layout.pickups].reverse()), layout.tones.min),
    sharedCap,
    toneFeed,
    bleed,
    options: automatic,
    resistors: readResistors(guard, roles, pickups, bleed?.resistors ?? []),
    star: terminal(guard, "ground"),
    shield: terminal(guard, "shield"),
    claw: terminal(guard, "claw"),
    jack: roles.jack,
  };
}
