import { h } from "./element.ts";

/** Brings a style sheet of its own, once: what the first screen does not show does not wait with it. */
export function bringStyle(name: string): void {
  const { href } = new URL(`./${name}`, import.meta.url);
  if (document.querySelector(`link[href="${href}"]`)) return;
  document.head.append(h("link", { rel: "stylesheet", href }));
}
