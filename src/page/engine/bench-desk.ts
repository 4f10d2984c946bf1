import { auditBuild, type Finding } from "../../bench/audit/audit.ts";
import { DEFAULT_SHEET_OPTIONS, type SheetOptions } from "../../bench/sheet/options.ts";
import type { SwitchQuestion } from "../../bench/switch-finder/question.ts";
import type { Build } from "../../build-file/schema.ts";
import type { BenchAnswer, DrawerRequest } from "../../contract/bench/bench.ts";
import type { SwitchAnswer } from "../../contract/bench/switch-finder.ts";
import type { OwnProbe } from "../state/app-state.ts";
import type { RewiringTold } from "./rewire-told.ts";

export interface BenchQuestion {
  readonly build: Build;
  /** °C. */
  readonly temperature: number;
  /** What differs from the usual. */
  readonly sheet: Partial<SheetOptions>;
  readonly drawer: readonly DrawerRequest[];
  readonly probes: readonly OwnProbe[];
}

/** A fault of a build, in the audit's words. */
export type Fault = Pick<Finding, "code" | "lugs" | "message">;

/** The audit alone tells what a wire in hand would do; all the rest comes with the first question of the bench. */
const sheetWriter = () => import("../../bench/bench-sheet.ts");

/** What the service's bench answers, worked out in the browser. */
export class BenchDesk {
  /** @throws Error in the bench's own words where it refuses the question */
  async ask({ build, drawer, sheet, ...rest }: BenchQuestion): Promise<BenchAnswer> {
    const items = drawer.length === 0 ? [] : (await import("./drawer-reader.ts")).readDrawer(drawer);
    const { benchSheet } = await sheetWriter();
    return benchSheet(build, { ...DEFAULT_SHEET_OPTIONS, ...sheet, ...rest, drawer: items });
  }

  /** From the guard as found to the guard as wanted. */
  async rewire(from: Build, to: Build): Promise<RewiringTold> {
    return (await import("./rewire-told.ts")).rewireTold(from, to);
  }

  /** What an unknown switch is, from where a beeper beeps. */
  async findSwitch(question: SwitchQuestion): Promise<SwitchAnswer> {
    return (await import("../../bench/switch-finder/find-switch.ts")).findSwitch(question);
  }

  /** What keeps a build from working, by the audit alone. */
  faults(build: Build): Fault[] {
    return auditBuild(build)
      .filter(({ severity }) => severity === "fault")
      .map(({ code, lugs, message }) => ({ code, lugs, message }));
  }
}
