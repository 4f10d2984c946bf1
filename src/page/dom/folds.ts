/** Every fold that an element is in, itself where it is one. */
function foldsAbout(element: Element): HTMLDetailsElement[] {
  const fold = element.closest("details");
  if (!fold) return [];
  return [fold, ...(fold.parentElement ? foldsAbout(fold.parentElement) : [])];
}

/** Opens all that hides an element. */
export function unfold(element: Element): void {
  for (const fold of foldsAbout(element)) fold.open = true;
}

/** Acts when a fold about an element is closed. @returns what ends that */
export function whenFolded(element: Element, act: () => void): () => void {
  const folds = foldsAbout(element);
  const look = () => {
    if (folds.some(({ open }) => !open)) act();
  };
  for (const fold of folds) fold.addEventListener("toggle", look);
  return () => {
    for (const fold of folds) fold.removeEventListener("toggle", look);
  };
}
