import { type Guard, netAt } from "../guard.ts";

export const legNets = (guard: Guard, part: string): [number, number] => [
  netAt(guard, `${part}.a`),
  netAt(guard, `${part}.b`),
];

export const sameNets = (a: readonly number[], b: readonly number[]) =>
  (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);
