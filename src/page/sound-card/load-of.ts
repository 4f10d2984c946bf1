/** What was typed, by the names of a load; nothing typed is nothing there. */
export const loadOf = (resistance: string, capacitance: string) => ({
  ...(resistance ? { resistance } : {}),
  ...(capacitance ? { capacitance } : {}),
});
