import { netFraction } from "../../response/labels/position-coils.ts";
import type { CoilSource } from "../../response/pickup-elements.ts";
import type { AuditContext, State } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { coilLugs, leadsOf } from "./reach.ts";

/** Hum left of what the two coils would make together; a humbucker's everyday mismatch leaves a tenth of this. */
const ADDS_ABOVE = 0.6;

/** Pickups whose two coils help each other in signal and in hum alike. */
function humbuckersThatHum(context: AuditContext): Finding[] {
  return context.partsOf("pickup").flatMap(([name]) => {
    const humming = context.alive.filter(({ described }) =>
      described.pickups.some(
        ({ pickup, coils, coilsInPhase }) =>
          pickup === name &&
          coils.length === 2 &&
          coilsInPhase &&
          netFraction(coils.map(({ hum }) => hum)) > ADDS_ABOVE,
      ),
    );
    if (humming.length === 0) return [];
    return finding({
      code: "hum-not-cancelling",
      lugs: leadsOf(context, name),
      settings: context.settingsOf(humming),
      message: `The two coils of ${name} add their hum instead of cancelling it.`,
      remedy:
        "Both coils have the same magnet pole up. Turn the magnet of one of them and swap that coil's start and finish, where it sits on a loose bar magnet; rods are never pushed out of a coil, and would have to be recharged the other way.",
    });
  });
}

/** The sign with which a coil's hum stands to its signal; two coils in phase cancel hum where it differs. */
const humAgainstSignal = ({ emf, humSign }: CoilSource) => Math.sign(emf) * humSign;

/** In a state of one split coil beside one other, the split coil, where its sister would cancel the hum that it adds. */
function betterSister(context: AuditContext, { described }: State): CoilSource | undefined {
  const { coils, hum, phase } = described;
  if (coils.length !== 2 || hum !== "not cancelling" || phase !== "in phase") return undefined;
  if (coils[0]!.pickup === coils[1]!.pickup) return undefined;
  const sources = coils.map(({ source }) => context.sources[source]!);
  for (const [index, kept] of sources.entries()) {
    const other = sources[1 - index]!;
    const sister = context.sources.find(({ pickup, coil }) => pickup === kept.pickup && coil !== kept.coil);
    if (sister && humAgainstSignal(sister) !== humAgainstSignal(other)) return sister;
  }
  return undefined;
}

/** Split pickups that keep the coil which adds hum to its neighbour's, where the other coil would cancel it. */
function splitsThatHum(context: AuditContext): Finding[] {
  const found = new Map<string, { sister: CoilSource; states: State[] }>();
  for (const state of context.alive) {
    const sister = betterSister(context, state);
    if (!sister) continue;
    const key = `${sister.pickup}.${sister.coil}`;
    const entry = found.get(key) ?? { sister, states: [] };
    entry.states.push(state);
    found.set(key, entry);
  }
  return [...found.values()].map(({ sister, states }) =>
    finding({
      code: "hum-not-cancelling",
      severity: "note",
      lugs: coilLugs(context, sister.pickup, sister.coil),
      settings: context.settingsOf(states),
      message: `${states[0]!.described.label}: the pair would cancel hum with the ${sister.coil} coil of ${sister.pickup} instead.`,
      remedy: `Let the split keep the ${sister.coil} coil of ${sister.pickup}.`,
    }),
  );
}

/** Hum where one expects it to cancel. */
export function humWhereCancellingIsExpected(context: AuditContext): Finding[] {
  return [...humbuckersThatHum(context), ...splitsThatHum(context)];
}
