/** Shelf files that were opened elsewhere on the page, for the shelf to take once it is there. */
const waiting: File[] = [];
let take: ((file: File) => void) | undefined;

export function handToShelf(file: File): void {
  if (take) take(file);
  else waiting.push(file);
}

/** From now on they go to this; there is one shelf on the page. */
export function receiveFiles(receiver: (file: File) => void): void {
  take = receiver;
  for (const file of waiting.splice(0)) receiver(file);
}
