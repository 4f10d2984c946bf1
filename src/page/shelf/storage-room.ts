/** Asks the browser once not to clear what is kept when room gets short; it may say no, or ask the person. */
export async function askToLast(): Promise<void> {
  try {
    if (!(await navigator.storage?.persisted?.())) await navigator.storage?.persist?.();
  } catch {
    // Not on an address without https; what is kept stays as long as the browser sees fit.
  }
}

const MEGABYTE = 1e6;

function size(bytes: number): string {
  if (bytes < MEGABYTE / 10) return "less than 0.1 MB";
  if (bytes < 10 * MEGABYTE) return `${(bytes / MEGABYTE).toFixed(1)} MB`;
  return bytes < 1000 * MEGABYTE ? `${Math.round(bytes / MEGABYTE)} MB` : `${(bytes / MEGABYTE / 1000).toFixed(1)} GB`;
}

/** What the page's storage takes, of how much, and whether the browser may clear it; empty where the browser does not say. */
export async function storageWords(): Promise<string> {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    if (usage === undefined || quota === undefined) return "";
    const lasts = await navigator.storage.persisted();
    const promise = lasts
      ? "The browser has promised not to clear it by itself."
      : "The browser may clear it when room gets short.";
    return `This page takes ${size(usage)} of about ${size(quota)} that the browser grants. ${promise}`;
  } catch {
    return "";
  }
}
