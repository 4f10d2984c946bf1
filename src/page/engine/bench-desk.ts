import type { StringLevelsQuestion } from "../../audio/string-levels/usable-plucks.ts";
import { auditBuild, type Finding } from "../../bench/audit/audit.ts";
import type { DielectricsTold } from "../../bench/dielectrics/told.ts";
import type { Habits } from "../../bench/heights/habits/habits.ts";
import type { HeightsTold } from "../../bench/heights/heights-told.ts";
import type { OwnMeter } from "../../bench/meter/own/own-meter.ts";
import type { DrawerItem } from "../../bench/parts/drawer.ts";
import type { Passport, PassportRequest } from "../../bench/passport/passport.ts";
import type { Measures } from "../../bench/room/measures.ts";
import { DEFAULT_SHEET_OPTIONS, type SheetOptions } from "../../bench/sheet/options.ts";
import type { SwitchQuestion } from "../../bench/switch-finder/question.ts";
import type { Build } from "../../build-file/schema.ts";
import type { BenchAnswer, DrawerRequest } from "../../contract/bench/bench.ts";
import type { HeightsAsked } from "../../contract/bench/heights.ts";
import type { SwitchAnswer } from "../../contract/bench/switch-finder.ts";
import type { OwnProbe } from "../state/app-state.ts";
import type { DrawerAsked, DrawerReply } from "./drawer-answer.ts";
import type { GuardPartsAsked, GuardPartsReply } from "./guard-parts-told.ts";
import type { Replied } from "./heights-reader.ts";
import type { LeadsAsked, LeadsTold } from "./leads-told.ts";
import type { NoiseAsked, NoiseReply } from "./noise-asked.ts";
import type { RewiringTold } from "./rewire-told.ts";
import type { RoomAsked } from "./room-asked.ts";

export interface BenchQuestion {
  readonly build: Build;
  /** °C. */
  readonly temperature: number;
  readonly meter: OwnMeter | undefined;
  /** What differs from the usual. */
  readonly sheet: Partial<SheetOptions>;
  readonly drawer: readonly DrawerRequest[];
  readonly probes: readonly OwnProbe[];
}

export interface PassportQuestion extends Omit<PassportRequest, "drawer"> {
  readonly build: Build;
  readonly drawer: readonly DrawerRequest[];
}

async function itemsOf(drawer: readonly DrawerRequest[]): Promise<readonly DrawerItem[]> {
  return drawer.length === 0 ? [] : (await import("./drawer-reader.ts")).readDrawer(drawer);
}

/** A fault of a build, in the audit's words. */
export type Fault = Pick<Finding, "code" | "lugs" | "message">;

/** The audit alone tells what a wire in hand would do; all the rest comes with the first question of the bench. */
const sheetWriter = () => import("../../bench/bench-sheet.ts");
const heightsReader = () => import("./heights-reader.ts");

/** What the service's bench answers, worked out in the browser. */
export class BenchDesk {
  /** @throws Error in the bench's own words where it refuses the question */
  async ask({ build, drawer, sheet, ...rest }: BenchQuestion): Promise<BenchAnswer> {
    const items = await itemsOf(drawer);
    const { benchSheet } = await sheetWriter();
    return benchSheet(build, { ...DEFAULT_SHEET_OPTIONS, ...sheet, ...rest, drawer: items });
  }

  /** From the guard as found to the guard as wanted. */
  async rewire(from: Build, to: Build): Promise<RewiringTold> {
    return (await import("./rewire-told.ts")).rewireTold(from, to);
  }

  /** What is worth knowing of a guard years later. */
  async passport({ build, drawer, ...rest }: PassportQuestion): Promise<Passport> {
    const items = await itemsOf(drawer);
    return (await import("../../bench/passport/passport.ts")).passportOf(build, { ...rest, drawer: items });
  }

  /** Whether the guard goes into the body that was measured. */
  async room(build: Build, measures: Measures): Promise<RoomAsked> {
    return (await import("./room-asked.ts")).askRoom(build, measures);
  }

  /**
   * What an unknown pickup is, and where a place is given, how it goes into the guard.
   * @throws Error in the bench's own words where it refuses the question
   */
  async leads(asked: LeadsAsked): Promise<LeadsTold> {
    if (asked.guard) return (await import("./leads-in-guard.ts")).leadsInGuardTold(asked.request, asked.guard);
    return (await import("./leads-told.ts")).leadsTold(asked.request);
  }

  /** The lugs of a harness where a pickup is still to come. */
  async freePlaces(build: Build): Promise<string[]> {
    return (await import("./leads-told.ts")).freePlaces(build);
  }

  /** How far to turn the pickups' height screws. */
  async heights(build: Build, asked: HeightsAsked): Promise<Replied<HeightsTold>> {
    return (await heightsReader()).turnsTold(build, asked);
  }

  /** What changes for the player from one guard to the other. */
  async habits(from: Build, to: Build): Promise<Habits> {
    return (await import("../../bench/heights/habits/habits.ts")).habitsBetween(from, to, []);
  }

  /** Levels of the open strings in a WAV file, from string 1. */
  async stringLevels(file: Uint8Array, question: StringLevelsQuestion): Promise<Replied<readonly number[]>> {
    return (await heightsReader()).levelsTold(file, question);
  }

  /** Whether it can be heard what these caps are made of. */
  async dielectrics(build: Build, caps: readonly string[]): Promise<DielectricsTold> {
    return (await import("./dielectrics-told.ts")).toldOfDielectrics(build, caps);
  }

  /** Hum and hiss of every position. */
  async noise(asked: NoiseAsked): Promise<NoiseReply> {
    return (await import("./noise-asked.ts")).toldOfNoise(asked);
  }

  /** What an unknown switch is, from where a beeper beeps. */
  async findSwitch(question: SwitchQuestion): Promise<SwitchAnswer> {
    return (await import("../../bench/switch-finder/find-switch.ts")).findSwitch(question);
  }

  /** A drawer beside the guards of a shelf. */
  async drawer(asked: DrawerAsked): Promise<DrawerReply> {
    return (await import("./drawer-told.ts")).drawerTold(asked);
  }

  /** A guard's parts as a drawer takes them. */
  async guardParts(asked: GuardPartsAsked): Promise<GuardPartsReply> {
    return (await import("./guard-parts-told.ts")).guardPartsTold(asked);
  }

  /** What keeps a build from working, by the audit alone. */
  faults(build: Build): Fault[] {
    return auditBuild(build)
      .filter(({ severity }) => severity === "fault")
      .map(({ code, lugs, message }) => ({ code, lugs, message }));
  }
}
