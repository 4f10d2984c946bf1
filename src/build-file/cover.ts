import { MAX_METALS } from "../limits.ts";
import type { CoilInput } from "./catalogue/pickup-types.ts";
import { GOOD_COVER } from "./catalogue/shieldings.ts";
import { parseQuantity } from "./quantity.ts";
import { showQuantity } from "./show-quantity.ts";

/**
 * What a cover of low loss adds across a coil: 0.4 µS across a coil of 10 H, of its on and off (as `GOOD_COVER`). Turn for turn the
 * same loss is a resistance that goes with the inductance.
 */
const OHMS_PER_HENRY = 250_000;
/** Closer than written values are rounded. */
const NEAR = 0.02;

type Loss = Exclude<NonNullable<CoilInput["loss"]>, string | number>[number];

const lossesOf = ({ loss }: CoilInput): readonly Loss[] =>
  loss === undefined ? [] : Array.isArray(loss) ? loss : [{ resistance: loss }];
const metalsOf = ({ shielding }: CoilInput) => [shielding ?? []].flat();

function coverOhms(coil: CoilInput): number {
  const henries = [coil, ...lossesOf(coil)].map(({ inductance = 0 }) => parseQuantity(inductance, "inductance").value);
  return OHMS_PER_HENRY * henries.reduce((sum, each) => sum + each, 0);
}

function isCover(metal: ReturnType<typeof metalsOf>[number]): boolean {
  return "pole" in metal && parseQuantity(metal.pole, "frequency").value === GOOD_COVER.pole;
}

function isCoverLoss({ resistance, inductance }: Loss, ohms: number): boolean {
  return inductance === undefined && Math.abs(parseQuantity(resistance, "resistance").value / ohms - 1) < NEAR;
}

/** Whether a cover may be told of beside the metal that a coil has already. */
export function hasRoomForCover(coil: CoilInput): boolean {
  return isCovered(coil) || metalsOf(coil).length < MAX_METALS;
}

export function isCovered(coil: CoilInput): boolean {
  return metalsOf(coil).some(isCover);
}

/** A coil under a cover of low loss besides the metal it has: what the cover takes of the EMF, and its loss. */
export function withCover(coil: CoilInput): CoilInput {
  if (isCovered(coil)) return coil;
  const resistance = showQuantity(coverOhms(coil), "resistance", 3).replace(/[\sΩ]/g, "");
  return { ...coil, loss: [...lossesOf(coil), { resistance }], shielding: [...metalsOf(coil), GOOD_COVER] };
}

/** The same coil with the cover off. Where its loss was told as a whole, the cover's is not known apart and stays. */
export function withoutCover(coil: CoilInput): CoilInput {
  const { loss: _loss, shielding: _shielding, ...rest } = coil;
  const losses = lossesOf(coil);
  const at = losses.findIndex((loss) => isCoverLoss(loss, coverOhms(coil)));
  const left = losses.filter((_, index) => index !== at);
  const [first] = left;
  const isOne = left.length === 1 && first!.inductance === undefined;
  const metals = metalsOf(coil).filter((metal) => !isCover(metal));
  return {
    ...rest,
    ...(first === undefined ? {} : { loss: isOne ? first.resistance : left }),
    ...(metals.length === 0 ? {} : { shielding: metals.length === 1 ? metals[0]! : metals }),
  };
}
