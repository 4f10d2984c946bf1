import { refused } from "../../../errors.ts";

/** Of a table that somebody measured: Hz, and what belongs to each. */
export interface Columns {
  readonly frequenciesHz: readonly number[];
  readonly values: readonly number[];
  readonly thirds?: readonly number[] | undefined;
  readonly errors?: readonly number[] | undefined;
}

/** In rising order, as neighbours tell how many lines count as independent. @throws PresolderError REQUEST_INVALID */
export function checkedColumns(columns: Columns, valuesMustBePositive: boolean, path = ""): Columns {
  const { frequenciesHz, values, thirds, errors } = columns;
  const faults = [];
  if ([values, thirds, errors].some((list) => list && list.length !== frequenciesHz.length))
    faults.push({ path: `${path}table`, message: "its lists have different lengths; expected one value a frequency" });
  const bad = frequenciesHz.findIndex((value) => !(value > 0));
  if (bad >= 0)
    faults.push({
      path: `${path}table.frequencies.${bad}`,
      message: `is ${frequenciesHz[bad]}; expected more than 0 Hz`,
    });
  const low = valuesMustBePositive ? values.findIndex((value) => !(value > 0)) : -1;
  if (low >= 0) faults.push({ path: `table.ohms.${low}`, message: `is ${values[low]}; expected more than 0 Ω` });
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  const rising = [...frequenciesHz.keys()].sort((a, b) => frequenciesHz[a]! - frequenciesHz[b]!);
  const sorted = (list: readonly number[]) => rising.map((at) => list[at]!);
  return {
    frequenciesHz: sorted(frequenciesHz),
    values: sorted(values),
    thirds: thirds && sorted(thirds),
    errors: errors && sorted(errors),
  };
}
