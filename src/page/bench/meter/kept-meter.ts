import { METER_KINDS, type MeterKindName } from "../../../bench/meter/own/meter-kinds.ts";
import { type MeterSpec, type OwnMeter, ownMeterOf } from "../../../bench/meter/own/own-meter.ts";
import { MAX_METER_LEADS_OHMS } from "../../../limits.ts";
import type { AppStore } from "../../state/app-state.ts";

const KEY = "presolder.meter.1";

/** What this browser keeps of the person's meter: it serves every guard. */
function keptMeter(): MeterSpec | undefined {
  try {
    const { kind, leads } = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Record<string, unknown>;
    if (typeof kind !== "string" || !Object.hasOwn(METER_KINDS, kind)) return undefined;
    const isFine = typeof leads === "number" && leads >= 0 && leads <= MAX_METER_LEADS_OHMS;
    return { kind: kind as MeterKindName, ...(isFine ? { leads } : {}) };
  } catch {
    return undefined;
  }
}

const brought = new WeakSet<AppStore>();

/** Takes up the meter that is kept, once. */
export function bringMeter(store: AppStore): void {
  if (brought.has(store)) return;
  brought.add(store);
  const meter = keptMeter();
  if (meter) store.set({ benchOptions: { ...store.state.benchOptions, meter } });
}

export function keepMeter(store: AppStore, meter: MeterSpec | undefined): void {
  store.set({ benchOptions: { ...store.state.benchOptions, meter } });
  try {
    if (meter) localStorage.setItem(KEY, JSON.stringify(meter));
    else localStorage.removeItem(KEY);
  } catch {
    // Without storage it lasts until the page is closed.
  }
}

/** As a request has it. */
export function meterTold({ kind, leads }: MeterSpec) {
  return { ...(kind ? { kind } : {}), ...(leads === undefined ? {} : { leads }) };
}

/** The person's meter; undefined where they did not say which. */
export function meterInUse(store: AppStore): OwnMeter | undefined {
  const { meter } = store.state.benchOptions;
  return meter && ownMeterOf(meter);
}
