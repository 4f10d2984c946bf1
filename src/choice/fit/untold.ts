import { type Attempt, relativeErrors } from "./fit-attempt.ts";

/**
 * A value is told where its standard error stays under this: 95 % then spans less than a factor of two and a half either way. It is less
 * than what of any value is known beforehand.
 */
const LARGEST_RELATIVE_ERROR = 0.45;
/** A loss hardly moves a curve by what its own values leave open to each other. */
const LARGEST_OF_LOSS = 0.65;
/** Beyond this the Jacobian's own rounding, about 1e-9, is no longer small beside the least direction. */
const LARGEST_CONDITION = 1e6;

const READABLE: Readonly<Record<string, string>> = {
  resistance: "the coil's resistance",
  inductance: "the inductance",
  capacitance: "the winding capacitance",
  loss: "the loss resistor",
};

function readable(name: string): string {
  return READABLE[name] ?? "a loss section's values";
}

/** Why the data cannot tell this model's values, or undefined where they can. */
export function complaint(of: Attempt, isLossUsual = false): string | undefined {
  if (!of.solution.covariance || of.solution.condition > LARGEST_CONDITION)
    return "the measurements do not tell its values apart (the least-squares problem is ill conditioned)";
  const errors = relativeErrors(of);
  const mostOfLoss = isLossUsual ? Number.POSITIVE_INFINITY : LARGEST_OF_LOSS;
  const most = (name: string) => (name.startsWith("loss") ? mostOfLoss : LARGEST_RELATIVE_ERROR);
  const untold = of.shape.names.filter((name, i) => !(errors[i]! <= most(name)));
  if (untold.length === 0) return undefined;
  return `the measurements do not fix ${[...new Set(untold.map(readable))].join(" and ")}`;
}
