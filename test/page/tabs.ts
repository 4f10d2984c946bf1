/** Every tab of the page, by its title. */
export const TABS = [
  "Plan",
  "Parts",
  "Wires",
  "Hear them all",
  "Blind test",
  "A against B",
  "Rewire",
  "Solder",
  "Measure",
  "Which part?",
  "What is it?",
  "Send it",
] as const;
