import { h } from "./element.ts";

const brought = new Map<string, Promise<void>>();

/**
 * Brings a style sheet of its own, once: what the first screen does not show does not wait with it.
 * @returns when it is there, or cannot be had: what it dresses can be read without it
 */
export function bringStyle(name: string): Promise<void> {
  let there = brought.get(name);
  if (!there) {
    const { href } = new URL(`./${name}`, import.meta.url);
    const link = h("link", { rel: "stylesheet", href });
    there = new Promise((resolve) => {
      for (const end of ["load", "error"]) link.addEventListener(end, () => resolve(), { once: true });
    });
    brought.set(name, there);
    document.head.append(link);
  }
  return there;
}
