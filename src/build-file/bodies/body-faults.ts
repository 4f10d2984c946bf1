import type { InputFault } from "../../errors.ts";
import { suggestion } from "../nearest.ts";
import type { Part } from "../schema.ts";
import { switchTable } from "../switch-types.ts";
import { bodiesOf, shaftBodiesOf } from "./bodies-of.ts";
import type { BodyKind } from "./body-kind.ts";

function fault(path: string, said: string | undefined, bodies: readonly BodyKind[]): InputFault[] {
  const known = bodies.map(({ name }) => name);
  if (said === undefined || known.includes(said)) return [];
  return [{ path, message: `a part of this type has no body "${said}"${suggestion(said, known)}` }];
}

/** Rows of lugs that are not the lugs of the switch, each once. */
function rowFaults(path: string, part: Part): InputFault[] {
  if (part.kind !== "switch" || !part.lugRows) return [];
  const said = part.lugRows.flat().filter((lug) => lug !== null);
  const { lugs } = switchTable(part);
  const twice = said.filter((lug, index) => said.indexOf(lug) !== index);
  const faults = [
    ...said
      .filter((lug) => !lugs.includes(lug))
      .map((lug) => `this switch has no lug "${lug}"${suggestion(lug, lugs)}`),
    ...lugs.filter((lug) => !said.includes(lug)).map((lug) => `the lug "${lug}" is missing`),
    ...twice.map((lug) => `the lug "${lug}" stands in it twice`),
  ];
  return faults.length === 0 ? [] : [{ path, message: `${faults[0]}; expected every lug of the switch once` }];
}

/** Bodies and rows of lugs that do not go with the part's type. @param path of the part */
export function bodyFaults(path: string, part: Part): InputFault[] {
  if (part.kind !== "pot" && part.kind !== "switch" && part.kind !== "jack") return [];
  const shaft = part.kind === "pot" ? part.drives?.body : undefined;
  return [
    ...fault(`${path}.body`, part.body, bodiesOf(part)),
    ...fault(`${path}.drives.body`, shaft, shaftBodiesOf(part)),
    ...rowFaults(`${path}.lugRows`, part),
  ];
}
