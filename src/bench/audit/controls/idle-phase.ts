import type { AuditContext } from "../context.ts";
import { type Finding, finding } from "../finding.ts";

/** A coil turned round leaves this much of what it and its turned self come to (−40 dB). */
const TURNED = 0.01;

/** Whether moving a switch turns what sounds round somewhere, and changes it nowhere else. */
export function turnsAlone(context: AuditContext, control: string): boolean {
  return context.alive.some(({ settings }) => {
    const coils = context.reaching(settings);
    const moved = context.reaching({ ...settings, switches: { ...settings.switches, [control]: 2 } });
    const size = (each: { readonly re: number; readonly im: number }) => Math.hypot(each.re, each.im);
    const loudest = Math.max(...coils.map(size));
    const strong = coils.flatMap((coil, index) => (size(coil) > loudest / 2 ? [[coil, moved[index]!] as const] : []));
    return strong.every(([was, is]) => Math.hypot(was.re + is.re, was.im + is.im) < TURNED * size(was));
  });
}

export function phaseUnheard(name: string, lugs: readonly string[]): Finding {
  return finding({
    code: "control-no-effect",
    severity: "warning",
    lugs,
    message: `${name} turns a pickup round that sounds beside no other: nothing is heard of it.`,
    remedy: "Its joints are right. A phase is heard where two pickups sound together; otherwise leave the switch out.",
  });
}
