import { type CoilInput, PICKUP_TYPES, type PickupType } from "../../build-file/catalogue/pickup-types.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { CoilCount } from "./question.ts";

type Dimension = "resistance" | "inductance" | "capacitance";

/** A coil so far from every type that the scale says nothing of it keeps within this. */
const MOST_SCALE = 3;

const written = (value: number, dimension: Dimension) => showQuantity(value, dimension, 3).replace(/[\sΩ]/g, "");
const ohmsOf = ({ resistance }: CoilInput) => parseQuantity(resistance, "resistance").value;

function scaledBy(input: string | number, dimension: Dimension, factor: number): string {
  return written(parseQuantity(input, dimension).value * factor, dimension);
}

/**
 * A type's coil wound to another resistance. Of the same wire on the same bobbin, resistance and output go with the turns, the
 * inductance and the resistor across it with their square; the capacitance is left, since it hardly follows them.
 */
function rewound(coil: CoilInput, ohms: number): CoilInput {
  const turns = Math.min(MOST_SCALE, Math.max(1 / MOST_SCALE, ohms / ohmsOf(coil)));
  const { loss, output = 1 } = coil;
  return {
    ...coil,
    resistance: written(ohms, "resistance"),
    inductance: scaledBy(coil.inductance, "inductance", turns ** 2),
    ...(loss === undefined
      ? {}
      : {
          loss: Array.isArray(loss)
            ? loss.map((section) => ({
                resistance: scaledBy(section.resistance, "resistance", turns ** 2),
                ...(section.inductance === undefined
                  ? {}
                  : { inductance: scaledBy(section.inductance, "inductance", turns ** 2) }),
              }))
            : scaledBy(loss, "resistance", turns ** 2),
        }),
    output: Number((output * turns).toPrecision(3)),
  };
}

/** Of the types with as many coils side by side, the one nearest in resistance. */
function nearestType(coils: CoilCount, ohms: number): PickupType {
  const alike = PICKUP_TYPES.filter(
    ({ name, coils: own, coupling = 0 }) =>
      Object.keys(own).length === coils && !name.endsWith("-rwrp") && coupling < 0.3,
  );
  const distance = (type: PickupType) => Math.abs(Math.log(ohmsOf(Object.values(type.coils)[0]!) / ohms));
  return alike.reduce((best, type) => (distance(type) < distance(best) ? type : best));
}

export interface OwnCoil {
  readonly name: string;
  readonly ohms: number;
  readonly winding: "forward" | "reverse";
  readonly magnet: "north" | "south";
}

/** A pickup of one's own, by the values of the nearest type. */
export function ownType(coils: readonly OwnCoil[], rest: Pick<PickupType, "conductors" | "metal">): PickupType {
  const mean = coils.reduce((sum, { ohms }) => sum + ohms, 0) / coils.length;
  const { coils: known, conductors: _c, metal: _m, ...type } = nearestType(coils.length as CoilCount, mean);
  const [model] = Object.values(known);
  return {
    ...type,
    coils: Object.fromEntries(
      coils.map(({ name, ohms, winding, magnet }) => [name, { ...rewound(model!, ohms), winding, magnet }]),
    ),
    ...rest,
  };
}
