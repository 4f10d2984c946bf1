import type { Outline } from "./body-kind.ts";
import type { JackBody } from "./body-names.ts";
import { mm, type Spot, type Spots } from "./spot.ts";

const spot = (x: number, y: number): Spot => ({ x: mm(x), y: mm(y) });

/** The sleeve's lug is on the ring about the bush, the tip's at the foot of the leaf, farther out. */
const SPOTS: Readonly<Record<JackBody, Readonly<Record<"tip" | "ring" | "sleeve", Spot>>>> = {
  open: { tip: spot(-6, -14), ring: spot(0, -14), sleeve: spot(6.5, -9) },
  barrel: { tip: spot(-4.5, 0), ring: spot(0, -4.5), sleeve: spot(4.5, 0) },
  box: { tip: spot(-6, -11), ring: spot(0, -11), sleeve: spot(6, -11) },
};

export function jackSpots(body: JackBody): Spots {
  return new Map(Object.entries(SPOTS[body]));
}

export function jackOutline(body: JackBody): Outline {
  if (body === "box") return { form: "box", width: mm(20), height: mm(18) };
  return { form: "round", radius: body === "barrel" ? mm(8) : mm(9) };
}
