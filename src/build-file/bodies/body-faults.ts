import type { InputFault } from "../../errors.ts";
import { suggestion } from "../nearest.ts";
import type { Part } from "../schema.ts";
import { bodiesOf, shaftBodiesOf } from "./bodies-of.ts";
import type { BodyKind } from "./body-kind.ts";

function fault(path: string, said: string | undefined, bodies: readonly BodyKind[]): InputFault[] {
  const known = bodies.map(({ name }) => name);
  if (said === undefined || known.includes(said)) return [];
  return [{ path, message: `a part of this type has no body "${said}"${suggestion(said, known)}` }];
}

/** Bodies that do not go with the part's type. @param path of the part */
export function bodyFaults(path: string, part: Part): InputFault[] {
  if (part.kind !== "pot" && part.kind !== "switch" && part.kind !== "jack") return [];
  const shaft = part.kind === "pot" ? part.drives?.body : undefined;
  return [
    ...fault(`${path}.body`, part.body, bodiesOf(part)),
    ...fault(`${path}.drives.body`, shaft, shaftBodiesOf(part)),
  ];
}
