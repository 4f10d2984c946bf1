export type Child = Node | string | number | null | undefined | false | readonly Child[];

type Listener = (event: never) => void;
export type Attributes = Readonly<Record<string, string | number | boolean | undefined | null | Listener>>;

const SVG_NAMESPACE = "http://www.w3.org/2000/svg";

function applyAttribute(element: Element, name: string, value: Attributes[string]): void {
  if (value === undefined || value === null || value === false) return;
  if (typeof value === "function") element.addEventListener(name.replace(/^on/, ""), value as EventListener);
  else if (value === true) element.setAttribute(name, "");
  // A style attribute set as text would break the content security policy; the object model's setter does not.
  else if (name === "style") (element as HTMLElement).style.cssText = String(value);
  else element.setAttribute(name, String(value));
}

export function append(parent: Element | DocumentFragment, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    if (Array.isArray(child)) append(parent, child);
    else parent.append(child instanceof Node ? child : String(child));
  }
}

/** An HTML element; keys beginning with `on` are listeners (`onclick`), false and undefined leave an attribute out. */
export function h<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) applyAttribute(element, name, value);
  append(element, children);
  return element;
}

/** An SVG element. */
export function s<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: Child[]
): SVGElementTagNameMap[Tag] {
  const element = document.createElementNS(SVG_NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) applyAttribute(element, name, value);
  append(element, children);
  return element;
}

export function replaceContent(element: Element, ...children: Child[]): void {
  element.replaceChildren();
  append(element, children);
}

let lastId = 0;
/** An id that no other element has, for labels and descriptions. */
export function freshId(stem: string): string {
  lastId += 1;
  return `${stem}-${lastId}`;
}
