import { Random } from "../../random.ts";
import { AnyGuard } from "./any-guard.ts";

function coil(guard: AnyGuard, like?: object): object {
  const { random } = guard;
  if (like)
    return { ...like, magnet: random.pick(["south", "south", "north"]), winding: random.pick(["reverse", "forward"]) };
  const loss = random.next();
  return {
    resistance: guard.between(1800, 9000),
    inductance: guard.between(1, 6),
    capacitance: random.chance(0.1) ? 0 : guard.between(20e-12, 500e-12),
    ...(loss < 0.4 ? { loss: guard.between(1e5, 5e6) } : {}),
    ...(loss > 0.8
      ? { loss: [1, 2].map(() => ({ resistance: guard.between(2e4, 3e5), inductance: guard.between(0.1, 1) })) }
      : {}),
    ...guard.maybe(0.15, () => ({ output: guard.between(0.5, 2) })),
    ...guard.maybe(0.1, () => ({ shielding: { pole: guard.between(2000, 30_000) } })),
  };
}

/** @returns its hot and its ground */
function pickup(guard: AnyGuard, like: object | undefined): [hot: string, ground: string, coil: object] {
  const { random } = guard;
  const first = like ?? coil(guard);
  if (random.chance(0.45)) {
    const name = guard.part("pickup", { coils: { coil: first } });
    return [`${name}.hot`, `${name}.ground`, first];
  }
  const second = random.chance(0.7) ? coil(guard, first) : coil(guard);
  const coupling = random.pick([{}, { coupling: 0.05 }, { coupling: 0.4 }, { coupling: 0.9 }]);
  const name = guard.part("pickup", { conductors: 2, coils: { slug: first, screw: second }, ...coupling });
  return [`${name}.hot`, `${name}.ground`, first];
}

function volume(guard: AnyGuard, role = "volume"): string {
  const { random } = guard;
  const resistance = random.pick([250_000, 500_000, 250_000, 25_000, 1_000_000]);
  return guard.part("pot", {
    role,
    resistance,
    taper: random.pick(["audio", "linear", "reverse-audio"]),
    ...guard.maybe(0.25, () => ({ endResistance: random.pick([0, 0, 20]) })),
  });
}

function tone(guard: AnyGuard, from: string): void {
  const pot = volume(guard, "tone");
  const { random } = guard;
  const film = guard.maybe(0.3, () => ({ dielectric: random.pick(["film-pet", "film-pp"]) }));
  const cap = guard.part("cap", { capacitance: guard.between(2e-9, 1e-7), ...film });
  guard.wire(`${pot}.3`, from);
  guard.wire(`${pot}.2`, `${cap}.a`);
  guard.wire(`${cap}.b`, "jack.sleeve");
}

function bleed(guard: AnyGuard, pot: string): void {
  const cap = guard.part("cap", { capacitance: guard.between(100e-12, 2e-9) });
  guard.wire(`${cap}.a`, `${pot}.3`);
  if (guard.random.chance(0.5)) {
    guard.wire(`${cap}.b`, `${pot}.2`);
    return;
  }
  const resistor = guard.part("resistor", { resistance: guard.between(50_000, 300_000) });
  guard.wire(`${cap}.b`, `${resistor}.a`);
  guard.wire(`${resistor}.b`, `${pot}.2`);
}

/** Pickups in series or side by side, or each on its own volume, then a volume and a tone, as guards are wired; by seed. */
export function plausibleGuard(seed: number): object {
  const random = new Random(seed);
  const guard = new AnyGuard(random);
  const count = 1 + random.below(4);
  const isAlike = random.chance(0.3);
  const way = random.pick(["series", "parallel", "blended", "blended"]);
  const joint = guard.part("terminal", {});
  let below = "jack.sleeve";
  let model: object | undefined;
  for (let index = 0; index < count; index++) {
    const [hot, ground, first] = pickup(guard, isAlike ? model : undefined);
    model = first;
    guard.wire(ground, way === "series" ? below : "jack.sleeve");
    if (way === "series") below = hot;
    else if (way === "parallel") guard.wire(hot, joint);
    else {
      const pot = volume(guard);
      const isIndependent = random.chance(0.3);
      guard.wire(hot, isIndependent ? `${pot}.2` : `${pot}.3`);
      guard.wire(`${pot}.1`, "jack.sleeve");
      guard.wire(isIndependent ? `${pot}.3` : `${pot}.2`, joint);
      if (random.chance(0.5)) tone(guard, random.pick([`${pot}.2`, `${pot}.3`]));
      if (random.chance(0.3)) bleed(guard, pot);
    }
  }
  if (way === "series") guard.wire(below, joint);
  let out = joint;
  if (random.chance(0.7)) {
    const master = volume(guard);
    guard.wire(joint, `${master}.3`);
    guard.wire(`${master}.1`, "jack.sleeve");
    out = `${master}.2`;
    if (random.chance(0.3)) bleed(guard, master);
  }
  if (random.chance(0.6)) tone(guard, random.chance(0.5) ? joint : out);
  guard.wire(out, "jack.tip");
  const cable = { length: guard.between(0.5, 10), capacitance: guard.between(5e-11, 3e-10) };
  const stopper = guard.maybe(0.2, () => ({ capacitance: guard.between(1e-11, 2e-10), stopper: 68_000 }));
  return guard.build({
    ...guard.maybe(0.8, () => ({ cable })),
    load: { resistance: random.pick([1e6, 1e6, 5e5, 1e7, 22_000]), ...stopper },
  });
}
