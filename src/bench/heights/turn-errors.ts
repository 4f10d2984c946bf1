import { type Balancing, gapsFrom, residualsAt, shiftOf } from "./balance.ts";
import { type BoundedSolution, solvePositive } from "./bounded-least-squares.ts";
import type { FittedLaws } from "./fit-laws.ts";
import { type Travels, travelsBetween } from "./gaps.ts";
import { type Predictor, predictorOf } from "./predictor.ts";
import type { Recorded } from "./recorded.ts";

/** Where the solution goes as its residuals shift: −(JᵀJ)⁻¹Jᵀ in the unknowns that no bound holds. */
function moverOf({ held, jacobian, unknowns }: BoundedSolution): (shift: Float64Array) => Float64Array {
  const free = held.flatMap((each, index) => (each === 0 ? [index] : []));
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const matrix = free.map((i) => Float64Array.from(free, (j) => dot(jacobian[i]!, jacobian[j]!)));
  return (shift) => {
    const steps = solvePositive(
      matrix,
      Float64Array.from(free, (index) => -dot(jacobian[index]!, shift)),
    );
    const moved = Float64Array.from(unknowns);
    free.forEach((index, k) => {
      moved[index] = unknowns[index]! + steps[k]!;
    });
    return moved;
  };
}

interface Solved {
  readonly recorded: Recorded;
  readonly fitted: FittedLaws;
  readonly predict: Predictor;
  readonly balancing: Balancing;
  readonly solution: BoundedSolution;
}

/** Shifts of the residuals, one for every independent way in which levels and laws may be off by a standard error. */
function shiftsOf({ recorded, fitted, predict, balancing, solution }: Solved): Float64Array[] {
  const levels = predict(gapsFrom(solution.unknowns));
  const counts = recorded.positions.map(
    (_, position) => recorded.observations.filter((observation) => observation.position === position).length,
  );
  const ofLevels = counts.flatMap((count, position) =>
    Array.from({ length: recorded.stringCount }, (_, string) =>
      shiftOf(levels, balancing, position, string).map((value) => (value * fitted.sigmaDb) / Math.sqrt(count)),
    ),
  );
  const here = residualsAt(solution.unknowns, predict, balancing);
  const ofLaws = fitted.deviations.map((laws) => {
    const other = predictorOf(recorded, laws);
    const now = other(balancing.pickups.map(({ gaps }) => gaps));
    return residualsAt(solution.unknowns, other, { ...balancing, now }).map((value, index) => value - here[index]!);
  });
  return [...ofLevels, ...ofLaws];
}

/** Standard errors of each pickup's screw travels in metres, from the levels' scatter and the laws' to first order. */
export function travelErrors(solved: Solved): Travels[] {
  const { balancing, solution } = solved;
  const move = moverOf(solution);
  const at = gapsFrom(solution.unknowns);
  const squares = balancing.pickups.map(() => ({ bassMetres: 0, trebleMetres: 0 }));
  for (const shift of shiftsOf(solved)) {
    gapsFrom(move(shift)).forEach((gaps, index) => {
      const { bassMetres, trebleMetres } = travelsBetween(at[index]!, gaps, balancing.pickups[index]!.lever);
      squares[index]!.bassMetres += bassMetres ** 2;
      squares[index]!.trebleMetres += trebleMetres ** 2;
    });
  }
  return squares.map(({ bassMetres, trebleMetres }) => ({
    bassMetres: Math.sqrt(bassMetres),
    trebleMetres: Math.sqrt(trebleMetres),
  }));
}
