import { METER_KIND_NAMES, METER_KINDS, type MeterKindName } from "../../../bench/meter/own/meter-kinds.ts";
import { ownMeterOf } from "../../../bench/meter/own/own-meter.ts";
import { MAX_METER_LEADS_OHMS } from "../../../limits.ts";
import { freshId, h, replaceContent } from "../../dom/element.ts";
import type { AppStore } from "../../state/app-state.ts";
import { createNumberSetting } from "../number-setting.ts";
import { bringMeter, keepMeter } from "./kept-meter.ts";

function leadsField(store: AppStore, kind: MeterKindName): HTMLElement {
  const { meter } = store.state.benchOptions;
  return createNumberSetting(
    {
      name: "meter-leads",
      label: "Its probes together, Ω (0: zeroed)",
      unit: "Ω",
      value: meter?.leads ?? ownMeterOf(kind).leads,
      min: 0,
      max: MAX_METER_LEADS_OHMS,
    },
    (leads) => keepMeter(store, { kind, leads }),
  );
}

/** Which meter the person reads with, kept in the browser. The same wherever readings are given or taken. */
export function createMeterControl(store: AppStore): HTMLElement {
  bringMeter(store);
  const id = freshId("meter");
  const leads = h("div", {});
  const select = h(
    "select",
    { id },
    h("option", { value: "" }, "any hobby meter"),
    METER_KIND_NAMES.map((kind) => h("option", { value: kind }, METER_KINDS[kind].words)),
  );
  select.addEventListener("change", () =>
    keepMeter(store, select.value === "" ? undefined : { kind: select.value as MeterKindName }),
  );
  store.watchAny(
    ({ benchOptions }) => [benchOptions.meter?.kind],
    () => {
      const kind = store.state.benchOptions.meter?.kind;
      select.value = kind ?? "";
      replaceContent(leads, kind !== undefined && METER_KINDS[kind].ranging !== "needle" && leadsField(store, kind));
    },
  );
  return h(
    "div",
    { class: "row add-row meter-control" },
    h("div", { class: "field" }, h("label", { for: id }, "Your meter"), select),
    leads,
  );
}
