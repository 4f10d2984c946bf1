/** A length as it is read off a rule: "12.4 mm". */
export function millimetresText(metres: number): string {
  return `${Number((metres * 1000).toFixed(Math.abs(metres) < 0.01 ? 2 : 1))} mm`;
}
