import { Random } from "../../random.ts";
import { AnyGuard } from "./any-guard.ts";

/** Any value that a build file may have. */
function coil(guard: AnyGuard): object {
  const { random } = guard;
  const loss = random.next();
  const sections = () =>
    Array.from({ length: 1 + random.below(4) }, () => ({
      resistance: guard.between(1, 1e6),
      inductance: guard.between(1e-4, 100),
    }));
  return {
    resistance: guard.between(1e-3, 1e6),
    inductance: guard.between(1e-4, 1000),
    capacitance: random.chance(0.2) ? 0 : guard.between(1e-13, 1e-7),
    ...(loss < 0.3 ? { loss: guard.between(1e2, 1e9) } : {}),
    ...(loss > 0.8 ? { loss: sections() } : {}),
    winding: random.pick(["forward", "reverse"]),
    magnet: random.pick(["north", "south"]),
    ...guard.maybe(0.1, () => ({ shielding: { pole: guard.between(50, 1e6) } })),
  };
}

/** @returns lugs between which it stands */
function anyPart(guard: AnyGuard): string[] {
  const { random } = guard;
  const kind = random.next();
  if (kind < 0.3) {
    const name = guard.part("pickup", { coils: { coil: coil(guard) } });
    return [`${name}.hot`, `${name}.ground`];
  }
  if (kind < 0.45) {
    const first = coil(guard);
    const coils = { a: first, b: random.chance(0.5) ? first : coil(guard) };
    const coupling = random.pick([0, 0.05, 0.5, 0.9, -0.9, 0.99]);
    const name = guard.part("pickup", { conductors: 2, coils, coupling });
    return [`${name}.hot`, `${name}.ground`];
  }
  if (kind < 0.65) {
    const name = guard.part("resistor", { resistance: guard.between(1e-6, 1e9) });
    return [`${name}.a`, `${name}.b`];
  }
  if (kind < 0.8) {
    const name = guard.part("cap", {
      capacitance: guard.between(1e-14, 1e-5),
      ...guard.maybe(0.2, () => ({ lossFactor: 0.02 })),
    });
    return [`${name}.a`, `${name}.b`];
  }
  const name = guard.part("pot", {
    role: random.pick(["volume", "tone"]),
    resistance: guard.between(100, 1e7),
    taper: random.pick(["audio", "linear"]),
    endResistance: random.pick([0, 1]),
    ...guard.maybe(0.2, () => ({ noLoad: true })),
  });
  return [`${name}.1`, `${name}.2`, `${name}.3`];
}

/** Up to a dozen parts of any value, hung from each other anywhere, a coil at least among them; by seed. */
export function extremeGuard(seed: number): object {
  const random = new Random(seed);
  const guard = new AnyGuard(random);
  const lugs = ["jack.sleeve"];
  const first = guard.part("pickup", { coils: { coil: coil(guard) } });
  guard.wire(`${first}.ground`, "jack.sleeve");
  lugs.push(`${first}.hot`);
  for (let count = 2 + random.below(11); count > 0; count--) {
    const [one, ...others] = anyPart(guard) as [string, ...string[]];
    guard.wire(one, random.pick(lugs));
    for (const other of others) if (random.chance(0.5)) guard.wire(other, random.pick(lugs));
    lugs.push(one, ...others);
  }
  guard.wire(random.pick(lugs.slice(1)), "jack.tip");
  const cable = { length: guard.between(0.1, 200), capacitance: guard.between(1e-12, 1e-8) };
  return guard.build({
    ...guard.maybe(0.5, () => ({ cable })),
    load: { resistance: guard.between(1, 1e12), capacitance: random.chance(0.5) ? 0 : guard.between(1e-13, 1e-6) },
  });
}
