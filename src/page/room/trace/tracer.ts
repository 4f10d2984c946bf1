import type { Pixel } from "../../../bench/room/photo-frame.ts";
import { MAX_OUTLINE_POINTS } from "../../../limits.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { entryText, fieldRow } from "../entry-fields.ts";
import { metresFrom, sizeFrom, Unreadable } from "../millimetres.ts";
import { createPhotoBoard, type PhotoBoard } from "./photo-board.ts";
import { MARKS, type Trace, type TracedLine, tracedLine, traceWords } from "./trace.ts";

const HOW =
  "Take the photograph from the front, square above the body and from as far away as you can. It stays in this browser: it is sent nowhere and not kept, only the numbers are.";

const lengthOr = <Otherwise>(text: string, from: (text: string) => number, otherwise: Otherwise) => {
  try {
    return from(text.trim());
  } catch (error) {
    if (error instanceof Unreadable) return otherwise;
    throw error;
  }
};

/** A photograph's size in its own pixels. @throws Error where it is no picture */
async function sizeOfPhoto(address: string): Promise<{ readonly width: number; readonly height: number }> {
  const image = new Image();
  image.src = address;
  await image.decode();
  return { width: image.naturalWidth, height: image.naturalHeight };
}

/** Asks for a photograph, dropped or chosen. */
function photoPicker(take: (file: File) => void): HTMLElement {
  const input = h("input", { type: "file", accept: "image/*" });
  input.addEventListener("change", () => input.files?.[0] && take(input.files[0]));
  const zone = h("label", { class: "trace-drop" }, "Choose a photograph, or drop one here ", input);
  zone.addEventListener("dragover", (event) => event.preventDefault());
  zone.addEventListener("drop", (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) take(file);
  });
  return zone;
}

/** How many times as wide as the page the photograph is shown. */
const ZOOMS = [1, 2, 4] as const;

/** Shows the photograph larger, so that a click is finer. */
function zoomChoice(zoom: (times: number) => void): HTMLElement {
  const select = h(
    "select",
    {},
    ZOOMS.map((times) => h("option", { value: times }, times === 1 ? "as wide as the page" : `${times} times as wide`)),
  );
  select.addEventListener("change", () => zoom(Number(select.value)));
  return h("label", { class: "trace-zoom" }, "The photograph is shown ", select);
}

/** A cavity's line along its edge in a photograph: two marks and their distance first, then point by point. */
export function createTracer(take: (line: TracedLine) => void): HTMLElement {
  let trace: Trace = { places: [], apart: undefined, fromBridge: 0 };
  let board: PhotoBoard | undefined;
  let address: string | undefined;
  const words = h("p", { class: "hint", role: "status" });
  const frame = h("div", { class: "trace-frame" });
  let times = 1;
  const set = (change: Partial<Trace>) => {
    trace = { ...trace, ...change };
    if (!board) return;
    board.show(trace.places);
    // Neither the hand nor the photograph is finer than its own pixel.
    const pixels = Math.max(1, board.pixels());
    words.textContent = traceWords(trace, pixels);
    const line = tracedLine(trace, pixels);
    if (line) take(line);
  };
  const replaced = (index: number, ...instead: Pixel[]) => trace.places.toSpliced(index, 1, ...instead);
  const actions = {
    add: (place: Pixel) => {
      if (trace.places.length < MARKS + MAX_OUTLINE_POINTS) set({ places: [...trace.places, place] });
    },
    move: (index: number, place: Pixel) => set({ places: replaced(index, place) }),
    remove: (index: number) => set({ places: replaced(index) }),
  };
  const zoom = (to: number) => {
    times = to;
    if (!board) return;
    board.element.style.width = `${100 * times}%`;
    set({});
  };
  const open = async (file: File) => {
    if (address) URL.revokeObjectURL(address);
    address = URL.createObjectURL(file);
    try {
      const { width, height } = await sizeOfPhoto(address);
      board = createPhotoBoard(address, width, height, actions);
      replaceContent(frame, board.element);
      zoom(times);
      set({ places: [] });
    } catch {
      replaceContent(
        frame,
        h("p", { class: "fault-text", role: "alert" }, `${file.name} cannot be read as a picture.`),
      );
    }
  };
  const apart = entryText(
    { path: "", label: "Between the two marks, mm", value: "", placeholder: "as measured on the body" },
    (text) => set({ apart: lengthOr(text, sizeFrom, undefined) }),
  );
  const fromBridge = entryText(
    { path: "", label: "From the bridge to the first mark, mm", value: "", placeholder: "0" },
    (text) => set({ fromBridge: lengthOr(text, metresFrom, 0) }),
  );
  const last = () => set({ places: trace.places.slice(0, -1) });
  return h(
    "div",
    { class: "trace stack" },
    h("p", { class: "hint" }, HOW),
    photoPicker((file) => void open(file)),
    fieldRow([apart, fromBridge]),
    words,
    frame,
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", onclick: last }, "Remove the last point"),
      zoomChoice(zoom),
    ),
  );
}
