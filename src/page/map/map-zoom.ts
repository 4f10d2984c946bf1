import { h } from "../dom/element.ts";

const ZOOMS = [1, 1.5, 2.2, 3.2, 4.5];

/** Makes the map larger within its scrolling frame, about the middle of what is seen. */
export function createMapZoom(frame: HTMLElement): HTMLElement {
  let at = 0;
  const set = (zoom: number) => {
    const { scrollLeft, scrollTop, clientWidth, clientHeight } = frame;
    const factor = ZOOMS[zoom]! / ZOOMS[at]!;
    at = zoom;
    frame.style.setProperty("--zoom", String(ZOOMS[zoom]));
    frame.scrollTo({
      left: (scrollLeft + clientWidth / 2) * factor - clientWidth / 2,
      top: (scrollTop + clientHeight / 2) * factor - clientHeight / 2,
    });
    closer.disabled = zoom === ZOOMS.length - 1;
    farther.disabled = zoom === 0;
  };
  const closer = h("button", { type: "button", onclick: () => set(at + 1) }, "Closer");
  const farther = h("button", { type: "button", disabled: true, onclick: () => set(at - 1) }, "Farther");
  const whole = h("button", { type: "button", onclick: () => set(0) }, "The whole map");
  return h("div", { class: "buttons" }, closer, farther, whole);
}
