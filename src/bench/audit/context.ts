import type { Lug } from "../../build-file/lugs.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import { Controls, type Settings } from "../../build-file/settings.ts";
import { DirectCurrent } from "../../network/direct-current.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { ResponseEngine } from "../../response/engine.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import { ActivityReader } from "../../response/labels/activity.ts";
import type { SettingDescription } from "../../response/labels/description.ts";
import { SILENT_BELOW } from "../../response/labels/position-coils.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { solvedTransfers, type Transfers } from "../../response/transfers.ts";
import type { Nets, Wiring } from "../../wiring/nets.ts";
import { type Effort, effortFor } from "./audit-effort.ts";
import type { Finding } from "./finding.ts";
import { type SwitchSettings, switchStates, telling, whereWords } from "./states.ts";

/** A state of the switches, with dials where the build sounds if it can. */
export interface State {
  readonly settings: Settings;
  readonly alive: boolean;
  readonly described: SettingDescription;
}

const REFERENCE = Float64Array.of(REFERENCE_HZ);
const HALFWAY = 5;

export function withDials(settings: Settings, dials: Readonly<Record<string, number>>): Settings {
  return { ...settings, dials: { ...settings.dials, ...dials } };
}

export function jackOhms(maker: CircuitMaker, settings: Settings): number | null {
  const { network, outputNode } = maker.circuitIn(settings, { withCableAndLoad: false });
  return new DirectCurrent(network).resistanceBetween(outputNode, 0);
}

/** Everything the rules ask about one build, computed once. */
export class AuditContext {
  readonly build: Build;
  readonly controls: Controls;
  readonly wiring: Wiring;
  readonly activity: ActivityReader;
  readonly states: readonly State[];
  readonly alive: readonly State[];
  /** Nets made by wires alone. */
  readonly wired: Nets;
  readonly jack: string;
  readonly effort: Effort;
  readonly #maker: CircuitMaker;
  readonly #transfersIn: (settings: Settings) => Transfers;
  readonly #nets = new Map<State, Nets>();

  constructor(build: Build) {
    this.build = build;
    this.controls = new Controls(build);
    this.#maker = new CircuitMaker(build);
    this.effort = effortFor(this.#maker);
    this.#transfersIn = this.#solver();
    this.wiring = this.#maker.wiring;
    this.activity = new ActivityReader(build, this.#transfersIn);
    this.wired = this.wiring.wiredNets();
    this.jack = this.partsOf("jack")[0]![0];
    const describer = new SettingDescriber(build);
    this.states = switchStates(this.controls, this.effort.maxStates).map((settings) =>
      this.#stateOf(settings, describer),
    );
    this.alive = this.states.filter((state) => state.alive);
  }

  #solver(): (settings: Settings) => Transfers {
    const maker = this.#maker;
    if (this.effort.solvesOutright) return (settings) => solvedTransfers(maker.circuitIn(settings), maker.sources);
    const engine = new ResponseEngine(this.build);
    return (settings) => engine.transfersIn(settings);
  }

  #stateOf(full: Settings, describer: SettingDescriber): State {
    const halfway = withDials(full, Object.fromEntries(this.controls.pots.map((pot) => [pot, HALFWAY])));
    const settings = this.isSilent(full) && !this.isSilent(halfway) ? halfway : full;
    return { settings, alive: !this.isSilent(settings), described: describer.describe(settings) };
  }

  get sources() {
    return this.#maker.sources;
  }

  partsOf<Kind extends Part["kind"]>(kind: Kind): [string, Extract<Part, { kind: Kind }>][] {
    return partsOfKind(this.build, kind);
  }

  /** How each coil reaches the jack, V/V at the reference frequency. */
  reaching(settings: Settings): { readonly re: number; readonly im: number }[] {
    return this.#transfersIn(settings)
      .perSource(REFERENCE)
      .map(({ re, im }) => ({ re: re[0]!, im: im[0]! }));
  }

  /** How strongly each coil reaches the jack, V/V at the reference frequency. */
  strengths(settings: Settings): number[] {
    return this.reaching(settings).map(({ re, im }) => Math.hypot(re, im));
  }

  isSilent(settings: Settings): boolean {
    return Math.max(0, ...this.strengths(settings)) < SILENT_BELOW;
  }

  netsIn(state: State): Nets {
    const known = this.#nets.get(state);
    if (known) return known;
    const nets = this.wiring.netsIn(state.settings);
    this.#nets.set(state, nets);
    return nets;
  }

  index(lug: string): number {
    return this.wiring.lugs.indexOf(lug);
  }

  netOf(lug: string, state: State): number {
    return this.netsIn(state).netOfLug[this.index(lug)]!;
  }

  isGrounded(lug: string, state: State): boolean {
    return this.netOf(lug, state) === this.netOf(`${this.jack}.sleeve`, state);
  }

  isWiredToGround(lug: string): boolean {
    const { netOfLug } = this.wired;
    return netOfLug[this.index(lug)] === netOfLug[this.index(`${this.jack}.sleeve`)];
  }

  /** The other lugs that share a lug's net: by wires alone, or in a state. */
  neighbours(lug: string, state?: State): Lug[] {
    const { netOfLug } = state ? this.netsIn(state) : this.wired;
    const own = this.index(lug);
    return this.wiring.lugs.lugs.filter((_, other) => other !== own && netOfLug[other] === netOfLug[own]);
  }

  /** What an ohmmeter across the jack reads, no cable plugged in; null where open. */
  jackOhms(settings: Settings): number | null {
    return jackOhms(this.#maker, settings);
  }

  settingsOf(states: readonly State[]): SwitchSettings[] {
    const settings = (list: readonly State[]) => list.map((state) => state.settings);
    return telling(this.controls, settings(states), settings(this.states));
  }

  where(states: readonly State[]): string {
    return whereWords(this.controls, this.settingsOf(states));
  }

  /** " in position 2", or nothing where it is so always. */
  whereElse(states: readonly State[]): string {
    return states.length === this.states.length ? "" : ` ${this.where(states)}`;
  }
}

/** A rule reads the context and tells what it finds. */
export type Rule = (context: AuditContext) => Finding[];
