/** Words that name no coil by themselves. */
const FALL_BACKS = ["first", "second"];

/** Names of coils for a build file, from what a person calls the rows. */
export function coilNames(rows: readonly string[], coils: number): string[] {
  if (coils === 1) return ["coil"];
  const names = rows.slice(0, coils).map((row, index) => {
    const plain = row
      .replaceAll(/[^A-Za-z0-9]+/g, "-")
      .replace(/^[^A-Za-z]+/, "")
      .replace(/-+$/, "")
      .slice(0, 24)
      .toLowerCase();
    return plain === "" || plain in Object.prototype ? FALL_BACKS[index]! : plain;
  });
  return names[0] === names[1] ? FALL_BACKS : names;
}
