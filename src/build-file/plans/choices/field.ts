import type { Plan } from "../plan-schema.ts";

/** One thing that can be chosen. */
export interface PlanChoice {
  readonly value: string;
  readonly label: string;
  /** Why it does not go together with the rest of the plan; absent where it does. */
  readonly reason?: string;
}

interface Named {
  /** Tells the field from the plan's others: "split.bridge". */
  readonly id: string;
  /** The plan's option that it sets, as the catalogue lists them. */
  readonly option: string;
  readonly title: string;
}

/** A plan's option as a form shows it. */
export type PlanField = Named &
  (
    | { readonly kind: "choice"; readonly value: string; readonly choices: readonly PlanChoice[] }
    | { readonly kind: "ticks"; readonly ticks: readonly (PlanChoice & { readonly on: boolean })[] }
    | { readonly kind: "quantity"; readonly dimension: "resistance" | "capacitance"; readonly value: string }
  );

/** A field with what it makes of a plan. Choices are whatever `made` is given; ticks and untickings are told by their value. */
export type PlanControl = Named & { readonly made: (value: string) => Plan } & (
    | { readonly kind: "choice"; readonly value: string; readonly choices: readonly PlanChoice[] }
    | { readonly kind: "ticks"; readonly ticks: readonly (PlanChoice & { readonly on: boolean })[] }
    | { readonly kind: "quantity"; readonly dimension: "resistance" | "capacitance"; readonly value: string }
  );

export const NONE = "none";

export const nothing: PlanChoice = { value: NONE, label: "none" };

/** A plan without an option, or with another value for it. */
export function withOption<Key extends keyof Plan>(plan: Plan, key: Key, value: Plan[Key] | undefined): Plan {
  const { [key]: _, ...rest } = plan;
  return (value === undefined ? rest : { ...rest, [key]: value }) as Plan;
}
