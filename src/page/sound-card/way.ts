import type { MeasureRequest, RecordingName } from "../../contract/measure/measure.ts";
import type { FormField } from "../fields/form-fields.ts";
import type { SignalKind } from "./measuring-signal.ts";

/** A recording that a way of measuring takes. @typeParam Name the form's field that it goes in */
export interface RecordingWanted<Name extends string = string> {
  readonly name: Name;
  readonly label: string;
  readonly isOptional?: boolean;
  /** Whether it is of no use without both inputs. */
  readonly isStereo?: boolean;
}

/** A way to measure one kind of thing: what it takes, how it is done, and what is sent. */
export interface Way {
  readonly picture: Element;
  readonly needs: readonly string[];
  readonly steps: readonly string[];
  /** What its answer is uncertain by. */
  readonly budget: string;
  readonly recordings: readonly RecordingWanted<RecordingName>[];
  readonly fields: readonly FormField[];
  /** @param given the recordings that are there */
  body(signal: SignalKind, given: ReadonlySet<RecordingName>): MeasureRequest;
}
