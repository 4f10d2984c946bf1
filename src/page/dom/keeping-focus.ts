/**
 * Draws an element's content anew and puts the focus back where it was.
 * @param key the data attribute, in camel case, by which what can have the focus is known again
 */
export function keepingFocus(element: HTMLElement, key: string, draw: () => void): void {
  const find = () =>
    [...element.querySelectorAll<HTMLElement>("*")].filter(({ dataset }) => dataset[key] !== undefined);
  const focused = find().find((each) => each === document.activeElement)?.dataset[key];
  draw();
  if (focused !== undefined)
    find()
      .find(({ dataset }) => dataset[key] === focused)
      ?.focus();
}
