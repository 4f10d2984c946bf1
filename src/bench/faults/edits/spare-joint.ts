import type { MeterModel } from "../../meter/meter-model.ts";
import type { DcParts, Parameter } from "../../meter/resistors.ts";
import type { Edit } from "./edit.ts";

/** The resistance of a poor joint, which is no part's: there is one in a model at most. */
const JOINT: Parameter = { part: "", tolerance: { fraction: 0, byDefault: false } };

/** The model with a place kept for the resistance of a poor joint; until an edit puts it somewhere it carries nothing. */
export function withSpareJoint(model: MeterModel): MeterModel {
  const { parts, firstSpareNode, nodeCount } = model;
  const spare = {
    a: nodeCount,
    b: nodeCount,
    ohms: 0,
    parameter: parts.parameters.length,
    span: "whole",
    track: -1,
  } as const;
  return {
    ...model,
    nodeCount: nodeCount + 1,
    firstSpareNode,
    parts: { ...parts, resistors: [...parts.resistors, spare], parameters: [...parts.parameters, JOINT] },
    ohms: Float64Array.of(...model.ohms, 0),
  };
}

/** Which of the resistors is kept for a poor joint. */
export function spareJointOf({ resistors, parameters }: DcParts): number {
  return resistors.findIndex(({ parameter }) => isSpareJoint(parameters[parameter]!));
}

/** Whether a value is that of the poor joint and of no part. */
export function isSpareJoint(parameter: Parameter): boolean {
  return parameter === JOINT;
}

/** Whether a fault puts resistance where the model keeps its one place for it. */
export function isAtJoint({ edits }: { readonly edits: readonly Edit[] }): boolean {
  return edits.some(({ edit }) => edit === "resist-wire" || edit === "resist-lug");
}
