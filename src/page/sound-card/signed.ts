/** With a minus sign as printed, and none before a zero. */
export const signed = (value: number, digits: number) =>
  value
    .toFixed(digits)
    .replace(/^-(?=.*[1-9])/, "−")
    .replace("-", "");
