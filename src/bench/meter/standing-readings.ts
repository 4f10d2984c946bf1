import { trackLugs } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, stateWord, withControl } from "../../build-file/settings.ts";
import { MAX_PROBES } from "../../limits.ts";
import { Wiring } from "../../wiring/nets.ts";
import { type MainPosition, mainPositions } from "../main-positions.ts";
import { harnessReadings } from "./harness-readings.ts";
import type { ReadingPlan } from "./reading-plan.ts";

/** More states than these of the lesser switches would make a sheet nobody works through. */
const MAX_STATES = 64;

/** Every main-switch position × every position of the other switches, all dials at 10. */
function switchStates(controls: Controls): MainPosition[] {
  const ordered = [...controls.switches].sort((a, b) => Number(b === controls.main) - Number(a === controls.main));
  let states: MainPosition[] = [{ settings: controls.atRest, label: "" }];
  for (const control of ordered) {
    const count = control.table.positions.length;
    if (states.length * count > MAX_STATES) break;
    states = states.flatMap(({ settings, label }) =>
      Array.from({ length: count }, (_, index) => ({
        settings: withControl(controls, settings, control.name, index + 1),
        label: [label, stateWord(control, index + 1)].filter(Boolean).join(", "),
      })),
    );
  }
  return states;
}

function volumeReadings(controls: Controls, jack: readonly [string, string]): ReadingPlan[] {
  const volumes = controls.potsWithRole("volume");
  // One volume acts alike in every position; with several it matters which pickups the switch lets in.
  const states = volumes.length > 1 ? mainPositions(controls) : mainPositions(controls).slice(0, 1);
  return volumes.flatMap((pot) =>
    states.flatMap(({ settings, label }): ReadingPlan[] => {
      const where = label === "" ? "" : `${label}, `;
      return [
        { label: `jack, ${where}${pot} at 0`, between: jack, settings: withControl(controls, settings, pot, 0) },
        { label: `jack, ${where}highest as ${pot} is swept`, between: jack, settings, sweep: pot },
      ];
    }),
  );
}

/** A cap blocks direct current, so a tone pot at 0 must not move a reading; where it does, the cap or its lug is shorted. */
function toneReadings(controls: Controls, jack: readonly [string, string]): ReadingPlan[] {
  if (controls.potsWithRole("tone").length === 0) return [];
  return mainPositions(controls).map(({ settings, label }) => ({
    label: `jack, ${label === "" ? "" : `${label}, `}every tone at 0`,
    between: jack,
    settings: withControl(controls, settings, "tone", 0),
  }));
}

/** A blend, or a pot of another role, at its middle and its other end, and its track. */
function blendReadings(build: Build, controls: Controls, jack: readonly [string, string]): ReadingPlan[] {
  const pots = partsOfKind(build, "pot").filter(([, pot]) => pot.role !== "volume" && pot.role !== "tone");
  return pots.flatMap(([name, pot]) => [
    ...[5, 0].map((dial) => ({
      label: `jack, ${name} at ${dial}`,
      between: jack,
      settings: withControl(controls, controls.atRest, name, dial),
    })),
    ...["", ...(pot.gangs ? ["b"] : [])].map((gang): ReadingPlan => {
      const between = [`${name}.${gang}1`, `${name}.${gang}3`] as const;
      return { label: `${name}, lug ${gang}1 to lug ${gang}3 in place`, between, settings: controls.atRest };
    }),
  ]);
}

/** The volume's grounded lug: where its joint is open the pot no longer silences. */
function groundedLugs(build: Build, controls: Controls, sleeve: string): ReadingPlan[] {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const grounded = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)] === netOfLug[wiring.lugs.indexOf(sleeve)];
  return controls
    .potsWithRole("volume")
    .flatMap((pot) => trackLugs(pot))
    .filter(grounded)
    .map((lug) => ({ label: `${lug} to jack sleeve`, between: [lug, sleeve], settings: controls.atRest }));
}

function toSleeve(build: Build, controls: Controls, sleeve: string): ReadingPlan[] {
  const settings = controls.atRest;
  const wired = new Set(build.wires.flatMap((wire) => [wire.from, wire.to]));
  const plan = (lug: string, what: string): ReadingPlan => ({
    label: `${what} to jack sleeve`,
    between: [lug, sleeve],
    settings,
  });
  return [
    ...partsOfKind(build, "terminal").map(([name, part]) =>
      plan(name, part.role === "claw" ? `strings and bridge (${name})` : name),
    ),
    ...partsOfKind(build, "pot").map(([name]) => plan(`${name}.case`, `${name} case`)),
    ...partsOfKind(build, "pickup")
      .filter(([name, part]) => (part.metal ?? "none") !== "none" || wired.has(`${name}.shield`))
      .map(([name, part]) => plan(`${name}.shield`, `${name} ${shieldWord(part.metal)}`)),
  ];
}

function shieldWord(metal: string | undefined): string {
  return metal === undefined || metal === "none" ? "shield" : metal;
}

/** The readings that tell whether a guard is sound, in the order to take them; at most as many as a diagnosis may be given. */
export function standingReadings(build: Build): ReadingPlan[] {
  const controls = new Controls(build);
  const [jackName] = partsOfKind(build, "jack")[0]!;
  const jack = [`${jackName}.tip`, `${jackName}.sleeve`] as const;
  const perPosition = switchStates(controls).map(({ settings, label }) => ({
    label: label === "" ? "jack" : `jack, ${label}`,
    between: jack,
    settings,
  }));
  const isHarness = partsOfKind(build, "pickup").length === 0;
  return [
    ...(isHarness ? harnessReadings(build, controls, jack[0]) : []),
    ...perPosition,
    ...volumeReadings(controls, jack),
    ...toneReadings(controls, jack),
    ...blendReadings(build, controls, jack),
    ...groundedLugs(build, controls, jack[1]),
    ...toSleeve(build, controls, jack[1]),
  ].slice(0, MAX_PROBES);
}
