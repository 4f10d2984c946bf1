import type { Dot } from "./nearest.ts";

/** Dots nearer than this to a first one lie on it, as seen. */
const TOGETHER = 6;
const APART = 14;

/** Places about a middle: side by side up to three, else around a ring on which they do not touch. */
function about({ x, y }: Dot, count: number): Dot[] {
  if (count <= 3) return Array.from({ length: count }, (_, k) => ({ x: x + (k - (count - 1) / 2) * APART, y }));
  const radius = Math.max(APART, (count * APART) / (2 * Math.PI));
  return Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });
}

/** Dots that would hide each other, put side by side about the place of the first, so that all of them are seen. */
export function fannedOut(dots: readonly Dot[]): Dot[] {
  const fanned = [...dots];
  const left = new Set(dots.keys());
  for (const first of left) {
    const { x, y } = dots[first]!;
    const group = [...left].filter((dot) => Math.hypot(dots[dot]!.x - x, dots[dot]!.y - y) < TOGETHER);
    for (const dot of group) left.delete(dot);
    if (group.length === 1) continue;
    for (const [k, place] of about(dots[first]!, group.length).entries()) fanned[group[k]!] = place;
  }
  return fanned;
}
