/** Whether somebody has asked their browser to save data: then nothing is loaded or worked out before it is wanted. */
export function savesData(): boolean {
  const { connection } = navigator as { readonly connection?: { readonly saveData?: boolean } };
  return connection?.saveData === true;
}
