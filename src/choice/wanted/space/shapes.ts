import { pickupType } from "../../../build-file/catalogue/pickup-types.ts";
import { PlanForm } from "../../../build-file/plans/choices/plan-form.ts";
import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";
import type { Wish } from "../wish.ts";
import { positionsOf } from "./positions.ts";

/** A way to wire a guard, its pickups chosen and its values not. */
export interface Shape {
  /** The customary guard that it grew from, by its title, or the person's own. */
  readonly from: string;
  readonly plan: PlanInput;
  /** What was changed of that. */
  readonly changes: readonly string[];
}

/** Types that fit where one sits, so that only its wind changes. */
const WINDS: readonly (readonly string[])[] = [
  ["single-vintage", "single-medium", "single-hot"],
  ["single-vintage-rwrp", "single-medium-rwrp", "single-hot-rwrp"],
  ["humbucker-vintage", "humbucker-medium", "humbucker-hot"],
];

type Pickups = Readonly<Record<string, readonly string[]>>;

/** What may sit in each place of a plan, what sits there now first. */
function typesFor(plan: PlanInput, wanted: Pickups): [place: string, types: (string | undefined)[]][] {
  return Object.entries(plan.pickups).map(([place, now]) => {
    const own = typeof now === "string" ? now : undefined;
    const listed = Object.hasOwn(wanted, place) ? wanted[place]! : undefined;
    const alike = own === undefined ? [] : (WINDS.find((winds) => winds.includes(own)) ?? []);
    // A list is a list of all that may sit there; without one, what sits there may stay.
    const types: (string | undefined)[] = listed ? [...listed] : [own, ...alike.filter((type) => type !== own)];
    return [place, types];
  });
}

function withPickup(shape: Shape, place: string, type: string | undefined): Shape {
  if (type === undefined || shape.plan.pickups[place] === type) return shape;
  const title = pickupType(type)?.title ?? type;
  return {
    ...shape,
    plan: { ...shape.plan, pickups: { ...shape.plan.pickups, [place]: type } },
    changes: [...shape.changes.filter((change) => !change.startsWith(`${place}: `)), `${place}: ${title}`],
  };
}

/** How many shapes a start has. */
export function countOf(start: Shape, wanted: Pickups): number {
  return typesFor(start.plan, wanted).reduce((count, [, types]) => count * types.length, 1);
}

/** Every choice of pickups for a start. */
export function shapesOf(start: Shape, wanted: Pickups): Shape[] {
  return typesFor(start.plan, wanted).reduce<Shape[]>(
    (shapes, [place, types]) => shapes.flatMap((shape) => types.map((type) => withPickup(shape, place, type))),
    [start],
  );
}

/** Every change of one pickup. */
export function pickupSteps(shape: Shape, wanted: Pickups): Shape[] {
  return typesFor(shape.plan, wanted).flatMap(([place, types]) =>
    types.filter((type) => type !== shape.plan.pickups[place]).map((type) => withPickup(shape, place, type)),
  );
}

const SWITCHED = new Set(["split", "seriesParallel", "phase", "seriesLink", "alwaysOn"]);

/**
 * Every switch added to a shape or taken off. Where a push-pull sits is not heard, so that of each sort the first place that is free
 * is enough.
 */
export function switchSteps(shape: Shape): Shape[] {
  const form = new PlanForm(shape.plan);
  return form.fields().flatMap((field) => {
    if (!SWITCHED.has(field.option) || field.kind !== "choice") return [];
    const sorts = new Map<string, (typeof field.choices)[number]>();
    for (const choice of field.choices) {
      const [sort] = choice.value.split(" ");
      const kind = sort === "switch" ? "pot" : choice.value;
      const key = sort === "pot" ? "pot" : kind;
      if (choice.reason === undefined && choice.value !== field.value && !sorts.has(key)) sorts.set(key, choice);
    }
    return Array.from(sorts.values(), (choice) => ({
      from: shape.from,
      plan: form.choose(field.id, choice.value),
      changes: [...shape.changes, `${field.title.toLowerCase()}: ${choice.label}`],
    }));
  });
}

/** Whether a plan has the positions and the pickups that are wished for. */
export function hasPlaces(plan: PlanInput, wishes: readonly Wish[]): boolean {
  return wishes.every(({ where }) => {
    if (where.kind === "position") return where.position <= positionsOf(plan);
    return where.kind !== "pickups" || where.pickups.every((pickup) => pickup in plan.pickups);
  });
}
