import { hasCoilLeads, leadsOfCoil } from "../build-file/lug-names.ts";
import { LugTable } from "../build-file/lugs.ts";
import { partsOfKind } from "../build-file/parts-of-kind.ts";
import type { Build, Pickup } from "../build-file/schema.ts";
import { Controls, rawSettings, type Settings, type SettingValue, withControl } from "../build-file/settings.ts";
import { ResponseEngine } from "../response/engine.ts";
import { emfSign, humSign } from "../response/pickup-elements.ts";
import { Wiring } from "../wiring/nets.ts";
import { affordableListenings } from "./solving-effort.ts";

export type Kick = "up" | "down";

export interface CoilCheck {
  readonly coil: string;
  /** Which way the needle goes with + on the finish and − on the start; "up" is a forward coil over north, by definition. */
  readonly kick: Kick;
  /** +1 or −1: coils of opposite sign cancel each other's hum. */
  readonly humSign: 1 | -1;
}

export interface PickupCheck {
  readonly pickup: string;
  readonly coils: readonly CoilCheck[];
  /** At the jack, in `settings`, where this pickup is loudest; null where no setting lets it through. */
  readonly kickAtJack: Kick | null;
  readonly settings: Readonly<Record<string, SettingValue>> | null;
  /** Whether the pickup, wired as the build says, agrees with the most of the others. */
  readonly agrees: boolean;
  /** Pairs of leads to exchange where the needle goes against what is told here, or where `agrees` is false. */
  readonly swap: readonly (readonly [string, string])[];
  readonly metal: string | null;
  readonly message: string;
}

export interface PhaseCheck {
  readonly how: readonly string[];
  readonly pickups: readonly PickupCheck[];
}

const HOW = [
  "Set a meter to its lowest DC millivolt range, + on the jack's tip and − on its sleeve; a needle shows it best. Nothing is plugged into an amplifier.",
  "Turn every dial to 10 and select one pickup. Leave its cover on, or lay tape over an open coil, and hold the screwdriver back so that the magnet cannot snatch it: a tip that jumps tears the wire. Lay the tip on the pole pieces and pull it off sharply: the first kick counts.",
  "Every pickup that is to sound in phase kicks the same way. The direction itself depends on the meter; only agreement matters.",
];

/** Low enough that no resonance turns the phase. */
const PROBE_HZ = 100;
/** 60 dB under a coil on its own, a pickup counts as not heard. */
const HEARD = 1e-3;

const MAX_STATES = 200;

interface Heard {
  readonly amplitude: number;
  readonly sign: 1 | -1;
  readonly settings: Settings;
}

/** Every combination of the switches while there are few enough; switches beyond that stay in their first position. */
function switchedSettings(controls: Controls, most: number): Settings[] {
  return controls.switches.reduce<Settings[]>(
    (states, { name, table }) =>
      states.length * table.positions.length > most
        ? states
        : states.flatMap((state) => table.positions.map((_, index) => withControl(controls, state, name, index + 1))),
    [controls.atRest],
  );
}

/** For each pickup, the setting of the switches in which it is loudest, and the sign with which it arrives there. */
function loudest(build: Build, controls: Controls): Map<string, Heard> {
  const engine = new ResponseEngine(build);
  const best = new Map<string, Heard>();
  for (const settings of switchedSettings(controls, Math.min(MAX_STATES, affordableListenings(build)))) {
    const transfers = engine.transfersIn(settings);
    const spectra = transfers.perSource(Float64Array.of(PROBE_HZ));
    const sums = new Map<string, { re: number; im: number }>();
    for (const [index, { pickup, emf }] of transfers.sources.entries()) {
      const sum = sums.get(pickup) ?? { re: 0, im: 0 };
      sums.set(pickup, { re: sum.re + emf * spectra[index]!.re[0]!, im: sum.im + emf * spectra[index]!.im[0]! });
    }
    for (const [pickup, { re, im }] of sums) {
      const amplitude = Math.hypot(re, im);
      if (amplitude > HEARD && amplitude > (best.get(pickup)?.amplitude ?? 0) * (1 + 1e-9))
        best.set(pickup, { amplitude, sign: re < 0 ? -1 : 1, settings });
    }
  }
  return best;
}

function kick(sign: number): Kick {
  return sign > 0 ? "up" : "down";
}

/** The free leads of two coils that a splice of their own joins, nothing else on it; undefined where a switch decides, or they are not joined. */
function outerLeads(
  wiring: Wiring,
  coils: readonly (readonly [string, string])[],
): readonly [string, string] | undefined {
  const { netOfLug } = wiring.wiredNets();
  const netOf = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)]!;
  const own = coils.flat();
  const [first, second] = coils;
  for (const inner of first!) {
    const spliced = second!.find((lug) => netOf(lug) === netOf(inner));
    if (spliced === undefined) continue;
    const onIt = wiring.lugs.lugs.filter((_, index) => netOfLug[index] === netOf(inner));
    if (!onIt.every(({ name }) => own.includes(name)) || onIt.length !== 2) return undefined;
    return [first!.find((lug) => lug !== inner)!, second!.find((lug) => lug !== spliced)!];
  }
  return undefined;
}

/** The leads to exchange: of coils in series the two outer ones, and the splice between them stays. */
function leadPairs(wiring: Wiring, name: string, pickup: Pickup): (readonly [string, string])[] {
  const pairs = Object.keys(pickup.coils).map((coil) => leadsOfCoil(name, pickup, coil));
  if (!hasCoilLeads(pickup)) return pairs.slice(0, 1);
  const outer = outerLeads(wiring, pairs);
  return outer ? [outer] : pairs;
}

/** What must happen to a pickup's metal before its leads may change places; null where it has none. */
function metalAdvice(build: Build, name: string, pickup: Pickup): string | null {
  const table = new LugTable(build.parts);
  const shield = `${name}.shield`;
  const ends = build.wires.map(({ from, to }) => [from, to].map((lug) => table.nameAt(table.indexOf(lug))));
  const others = ends.filter((pair) => pair.includes(shield)).map(([a, b]) => (a === shield ? b! : a!));
  const metal = pickup.metal === undefined || pickup.metal === "none" ? undefined : pickup.metal;
  const called = metal ?? "shield";
  const jumpered = others.filter((lug) => lug.startsWith(`${name}.`));
  if (jumpered.length > 0)
    return `Before its leads change places, cut the jumper between the ${called} and ${jumpered[0]} and run the ${called} to ground on its own; else the ${called} stands on the hot side.`;
  if (metal !== undefined && others.length === 0)
    return `Before its leads change places, see whether the ${called} is tied to one of its leads inside; if so, cut that jumper and run the ${called} to ground on its own.`;
  return null;
}

function messageFor(agrees: boolean, heard: Heard | undefined, swaps: string, metal: string | null): string {
  if (!heard) return "No setting of the switches lets this pickup through to the jack.";
  const advice = `exchange ${swaps}${metal === null ? "" : `. ${metal}`}`;
  return agrees
    ? `Kicks ${kick(heard.sign)} at the jack. Should it go the other way, ${advice}`
    : `As wired it kicks ${kick(heard.sign)}, against the others: together they sound thin. To mend it, ${advice}`;
}

/** What a needle must show for each pickup, and which leads to exchange where it does not. */
export function phaseCheck(build: Build): PhaseCheck {
  const controls = new Controls(build);
  const heard = loudest(build, controls);
  const balance = [...heard.values()].reduce((sum, { sign }) => sum + sign, 0);
  const first = [...heard.values()][0]?.sign ?? 1;
  const majority = balance === 0 ? first : Math.sign(balance);
  const wiring = new Wiring(build);
  const pickups = partsOfKind(build, "pickup").map(([name, pickup]): PickupCheck => {
    const at = heard.get(name);
    const agrees = at === undefined || at.sign === majority;
    const swap = leadPairs(wiring, name, pickup);
    const metal = metalAdvice(build, name, pickup);
    const swaps = swap.map((pair) => pair.join(" with ")).join(" and ");
    return {
      pickup: name,
      coils: Object.entries(pickup.coils).map(([coil, spec]) => ({
        coil,
        kick: kick(emfSign(spec)),
        humSign: humSign(spec),
      })),
      kickAtJack: at ? kick(at.sign) : null,
      settings: at ? rawSettings(controls, at.settings) : null,
      agrees,
      swap,
      metal,
      message: messageFor(agrees, at, swaps, metal),
    };
  });
  return { how: HOW, pickups };
}
