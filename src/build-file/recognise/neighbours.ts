import { hasCoilLeads } from "../lug-names.ts";
import { layoutOf } from "../plans/layouts.ts";
import { type Guard, namesOf, netAt, partOf } from "./guard.ts";
import { keptCoil } from "./reading/coils.ts";
import { groundNet, isTwoWay } from "./reading/roles.ts";
import { THROWS } from "./reading/signal.ts";
import type { BleedSketch, Option, Sketch, SwitchAt } from "./sketch.ts";

/** The other ways in which one thing about a plan might be; the rest as it is. */
export type Choice = readonly Sketch[];

/** Two-way switches, on a shaft or of their own, to which anything is wired. */
export function twoWaySwitches(guard: Guard, sketch: Sketch): SwitchAt[] {
  const pots = [...sketch.volumes, ...sketch.tones].flatMap(({ pot }) => (pot === undefined ? [] : [pot]));
  const onShaft = pots.filter((name) => partOf(guard, name, "pot").drives?.type === "dpdt");
  const own = namesOf(guard, "switch").filter((name) => isTwoWay(guard, name));
  return [...onShaft.map((part) => ({ part, onShaft: true })), ...own.map((part) => ({ part, onShaft: false }))].filter(
    (at) => isWired(guard, at),
  );
}

const controlOf = ({ part, onShaft }: SwitchAt) => (onShaft ? `${part}.s` : part);

function isWired(guard: Guard, at: SwitchAt): boolean {
  const control = `${controlOf(at)}.`;
  const own = guard.table.lugs.filter(({ name }) => name.startsWith(control)).map(({ name }) => netAt(guard, name));
  return guard.netOf.some((net, lug) => own.includes(net) && !guard.table.nameAt(lug).startsWith(control));
}

const pairsOf = <T>(all: readonly T[]): [T, T][] => all.flatMap((a, i) => all.slice(i + 1).map((b): [T, T] => [a, b]));

function splitOf(guard: Guard, sketch: Sketch, pickup: string, at: SwitchAt): Option {
  return { kind: "split", pickup, keeps: keptCoil(guard, sketch.pickups[pickup]!), at };
}

/** Everything that a plan could use a two-way switch for. */
function purposes(guard: Guard, sketch: Sketch, at: SwitchAt): Option[][] {
  const names = Object.keys(sketch.pickups);
  const withLeads = names.filter((name) => hasCoilLeads(partOf(guard, sketch.pickups[name]!, "pickup")));
  const splits = withLeads.map((pickup) => splitOf(guard, sketch, pickup, at));
  const always = names.length > 1 ? names.map((pickup): Option => ({ kind: "alwaysOn", pickup, at })) : [];
  const links = pairsOf(names).flatMap(([a, b]): Option[] => [
    { kind: "seriesLink", pickups: [a, b], at },
    { kind: "seriesLink", pickups: [b, a], at },
  ]);
  return [
    [],
    ...splits.map((split) => [split]),
    ...pairsOf(splits).flatMap(([a, b]) => [
      [a, b],
      [b, a],
    ]),
    ...withLeads.map((pickup): Option[] => [{ kind: "seriesParallel", pickup, at }]),
    ...names.map((pickup): Option[] => [{ kind: "phase", pickup, at }]),
    ...links.map((link) => [link]),
    ...always.map((option) => [option]),
    ...splits.flatMap((split) => always.map((option) => [split, option])),
  ];
}

const netsOf = (guard: Guard, isOwn: (lug: string) => boolean): number[] =>
  guard.table.lugs.flatMap(({ name }, lug) => (isOwn(name) ? [guard.netOf[lug]!] : []));

/** Nets at which a two-way switch could meet a pickup: its leads, its throws, and what lies behind another such switch. */
function meetingNets(guard: Guard, sketch: Sketch, pickup: string, switches: readonly SwitchAt[]): Set<number> {
  const leads = netsOf(guard, (lug) => lug.startsWith(`${sketch.pickups[pickup]}.`));
  const number = layoutOf(sketch.layout).pickups.length === 3 || pickup === "bridge" ? THROWS[pickup] : "[23]";
  const isThrow = new RegExp(`^${sketch.selector}\\.[AB]${number}$`);
  const nets = new Set([...leads, ...netsOf(guard, (lug) => isThrow.test(lug))]);
  for (const at of switches) {
    const behind = netsOf(guard, (lug) => lug.startsWith(`${controlOf(at)}.`));
    if (behind.some((net) => leads.includes(net))) for (const net of behind) nets.add(net);
  }
  return nets;
}

/** Whether the switch meets a pickup anywhere but at ground, where everything meets. */
function meets(guard: Guard, sketch: Sketch, at: SwitchAt): (pickup: string) => boolean {
  const ground = groundNet(guard);
  const own = netsOf(guard, (lug) => lug.startsWith(`${controlOf(at)}.`)).filter((net) => net !== ground);
  const others = twoWaySwitches(guard, sketch).filter(({ part }) => part !== at.part);
  const met = Object.keys(sketch.pickups).filter((pickup) => {
    const nets = meetingNets(guard, sketch, pickup, others);
    return own.some((net) => nets.has(net));
  });
  return (pickup) => met.includes(pickup);
}

const pickupsOf = (option: Option) => (option.kind === "seriesLink" ? option.pickups : [option.pickup]);

function switchChoice(guard: Guard, sketch: Sketch, at: SwitchAt): Choice {
  const elsewhere = sketch.options.filter((option) => option.kind === "automatic" || option.at.part !== at.part);
  const isOnce = (option: Option) => option.kind === "alwaysOn" || option.kind === "seriesLink";
  const isMet = meets(guard, sketch, at);
  return purposes(guard, sketch, at)
    .filter((purpose) => !purpose.some((a) => isOnce(a) && elsewhere.some((b) => a.kind === b.kind)))
    .filter((purpose) => purpose.flatMap(pickupsOf).every(isMet))
    .map((purpose) => ({ ...sketch, options: [...elsewhere, ...purpose] }));
}

function automaticChoice(guard: Guard, sketch: Sketch): Choice {
  if (layoutOf(sketch.layout).selector !== "lever-5") return [];
  const others = sketch.options.filter(({ kind }) => kind !== "automatic");
  const pickups = ["bridge", "neck"].filter((name) => hasCoilLeads(partOf(guard, sketch.pickups[name]!, "pickup")));
  const sets = [[], ...pickups.map((name) => [name]), ...(pickups.length > 1 ? [pickups] : [])];
  return sets.map((set) => ({
    ...sketch,
    options: [
      ...others,
      ...set.map((pickup): Option => ({ kind: "automatic", pickup, keeps: keptCoil(guard, sketch.pickups[pickup]!) })),
    ],
  }));
}

function keepsChoices(guard: Guard, sketch: Sketch): Choice[] {
  return sketch.options.flatMap((option, i): Choice[] => {
    if (option.kind !== "split" && option.kind !== "automatic") return [];
    const coils = Object.keys(partOf(guard, sketch.pickups[option.pickup]!, "pickup").coils);
    const keeps = coils.find((coil) => coil !== option.keeps)!;
    return [[{ ...sketch, options: sketch.options.with(i, { ...option, keeps }) }]];
  });
}

function toneChoices(sketch: Sketch): Choice[] {
  const names = layoutOf(sketch.layout).pickups;
  if (names.length === 1) return [];
  const neckFirst = [...names].reverse();
  const sets = [[], ...neckFirst.map((name) => [name]), ...(names.length > 2 ? pairsOf(neckFirst) : [])];
  return sketch.tones.map((tone, i) =>
    sets.map((pickups): Sketch => ({ ...sketch, tones: sketch.tones.with(i, { ...tone, pickups }) })),
  );
}

function withBleed(sketch: Sketch, bleed: BleedSketch | undefined): Sketch {
  const resistors = sketch.resistors.filter(({ part }) => bleed?.how === "alone" || !bleed?.resistors.includes(part));
  return { ...sketch, bleed, resistors };
}

function bleedChoice(guard: Guard, sketch: Sketch): Choice {
  const { bleed, volumes } = sketch;
  if (!bleed) return [];
  const all = namesOf(guard, "resistor");
  const sets = volumes.length > 1 ? pairsOf(all) : all.map((name) => [name]);
  const withResistors = sets.flatMap((resistors) =>
    (["parallel", "series"] as const).map((how): BleedSketch => ({ ...bleed, how, resistors })),
  );
  const alone: BleedSketch = { ...bleed, how: "alone", resistors: [] };
  return [undefined, alone, ...withResistors].map((other) => withBleed(sketch, other));
}

/** One cap for both tones, or one for each. */
function sharedCapChoice(sketch: Sketch): Choice {
  const [first, second] = sketch.tones;
  if (!first || !second) return [];
  if (sketch.sharedCap !== undefined)
    return [
      {
        ...sketch,
        sharedCap: undefined,
        tones: [
          { ...first, cap: sketch.sharedCap },
          { ...second, cap: undefined },
        ],
      },
    ];
  const caps = [first.cap, second.cap].filter((cap) => cap !== undefined);
  return caps.map((cap): Sketch => ({ ...sketch, sharedCap: cap }));
}

function resistorChoices(guard: Guard, sketch: Sketch): Choice[] {
  const pots = [...sketch.volumes, ...sketch.tones].flatMap(({ pot }) => (pot === undefined ? [] : [{ pot }]));
  const places = [...Object.keys(sketch.pickups).map((pickup) => ({ pickup })), ...pots];
  const known = [...sketch.resistors.map(({ part }) => part), ...(sketch.bleed?.resistors ?? [])];
  const free = namesOf(guard, "resistor").filter((part) => !known.includes(part));
  return [
    ...sketch.resistors.map(({ part }, i) => [
      ...places.map((across) => ({ ...sketch, resistors: sketch.resistors.with(i, { part, across }) })),
      { ...sketch, resistors: sketch.resistors.toSpliced(i, 1) },
    ]),
    ...free.map((part) =>
      places.map((across): Sketch => ({ ...sketch, resistors: [...sketch.resistors, { part, across }] })),
    ),
  ];
}

const otherFeed = (sketch: Sketch): Sketch => ({
  ...sketch,
  toneFeed: sketch.toneFeed === "after-volume" ? "before-volume" : "after-volume",
});

function ownersSwapped({ volumes }: Sketch): Sketch["volumes"] {
  const [first, second] = volumes;
  return second
    ? [
        { ...first!, pickup: second.pickup },
        { ...second, pickup: first!.pickup },
      ]
    : volumes;
}

/** Each choice that a plan leaves, with the alternatives; the likeliest to be misread first. */
export function choicesAbout(guard: Guard, sketch: Sketch): readonly (() => Choice[])[] {
  return [
    () => [[{ ...sketch, independent: !sketch.independent }]],
    ...twoWaySwitches(guard, sketch).map((at) => () => [switchChoice(guard, sketch, at)]),
    () => (sketch.volumes.length > 1 ? [[{ ...sketch, volumes: ownersSwapped(sketch) }]] : []),
    () => [[otherFeed(sketch)]],
    () => toneChoices(sketch),
    () => [sharedCapChoice(sketch)],
    () => [automaticChoice(guard, sketch)],
    () => resistorChoices(guard, sketch),
    () => [bleedChoice(guard, sketch)],
    () => keepsChoices(guard, sketch),
  ];
}
