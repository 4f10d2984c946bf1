import { connectionsOf } from "../../build-file/connections.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { asNeeded, forEach, type HardwareLine } from "./hardware-line.ts";
import { controlHardware, pickupHardware } from "./part-hardware.ts";

/** Parts whose own legs or leads run bare to a joint. */
function bareLegged(build: Build): string[] {
  const grown = connectionsOf(build).flatMap(({ grownFrom, means }) =>
    means === "leg" || means === "lead" ? grownFrom : [],
  );
  return [...new Set(grown.map((lug) => lug.split(".")[0]!))];
}

function terminals(build: Build, role: string): string[] {
  return partsOfKind(build, "terminal").flatMap(([name, part]) => (part.role === role ? [name] : []));
}

/** What the soldering takes besides wire. Common practice, no source. */
function supplies(build: Build): HardwareLine[] {
  const { wires } = build;
  return [
    ...(wires.length > 0
      ? [
          {
            what: "solder with a rosin core",
            quantity: null,
            for: [],
            note: "For electronics; a plumber's flux eats joints.",
          },
        ]
      : []),
    ...asNeeded(bareLegged(build), "insulating sleeve", "For bare legs, splices and the bare wire of a cable."),
    ...forEach(
      terminals(build, "ground"),
      1,
      "solder tag",
      "The point where all grounds meet, if no other metal serves.",
    ),
    ...asNeeded(
      terminals(build, "shield"),
      "copper foil or conductive paint",
      "For the cavity and the guard's back; pieces overlap, and a meter shows them joined.",
    ),
  ];
}

/** What holds the build's parts and covers their shafts, and what is used up; wire is in the parts list. */
export function hardwareOf(build: Build): HardwareLine[] {
  return [
    ...pickupHardware(build),
    ...controlHardware(build),
    { what: "guard screw", quantity: null, for: [], note: "As many as the guard has holes." },
    ...supplies(build),
  ];
}
