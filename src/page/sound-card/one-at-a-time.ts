import type { RecordingSlot } from "./recording-slot.ts";

type Place = Pick<RecordingSlot, "element" | "file">;

/** What is being recorded is not folded away for a file that is dropped elsewhere. */
const isBusy = ({ element }: Place) => element.querySelector(".recording-monitor") !== null;

/**
 * Keeps one place open, the first that is empty: whatever is filled is folded, and the next opens.
 * @param places all of them now, in their order
 */
export function createOneAtATime(places: () => readonly Place[]) {
  const openNext = (filled?: Place) => {
    const all = places();
    const next = all.find(({ file }) => file === undefined);
    for (const place of all) if (place === filled || !isBusy(place)) place.element.open = place === next;
  };
  return {
    openNext,
    follow: (place: Place) =>
      place.element.addEventListener("put", () => {
        if (place.file) openNext(place);
      }),
  };
}
