/** Lets a file be dropped on an element. @param take is given the first of what is dropped */
export function acceptDrops(element: HTMLElement, take: (file: File | undefined) => void): void {
  element.addEventListener("dragover", (event) => {
    event.preventDefault();
    element.classList.add("drop-over");
  });
  element.addEventListener("dragleave", () => element.classList.remove("drop-over"));
  element.addEventListener("drop", (event) => {
    event.preventDefault();
    element.classList.remove("drop-over");
    take(event.dataTransfer?.files[0]);
  });
}
