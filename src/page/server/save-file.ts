/** Hands the person a file to keep. */
export function saveFile(name: string, content: Blob): void {
  const url = URL.createObjectURL(content);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A title as the stem of a file name. */
export function fileStem(title: string | undefined): string {
  const stem = (title ?? "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60);
  return stem || "guard";
}
