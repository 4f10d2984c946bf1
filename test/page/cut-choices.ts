import type { Locator } from "playwright-core";

/** The arrow of a choice, in pixels. */
const ARROW = 16;

/** What can be chosen within an element and does not fit where it is shown. A device's name is not ours to shorten. */
export function cutChoices(within: Locator): Promise<string[]> {
  return within.locator("select:visible").evaluateAll((all, arrow) => {
    const context = document.createElement("canvas").getContext("2d")!;
    return (all as HTMLSelectElement[]).flatMap((select) => {
      const { font, paddingLeft, paddingRight } = getComputedStyle(select);
      context.font = font;
      const room = select.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight) - arrow;
      const texts = [...select.options].filter(
        ({ value }) => value === select.value || select.labels[0]?.textContent !== "Input",
      );
      return texts.map(({ text }) => text).filter((text) => context.measureText(text).width > room);
    });
  }, ARROW);
}
