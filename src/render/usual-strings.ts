import { type StringSet, usualStringSet } from "../strings/string-set.ts";

/** What phrases are plucked on where a build says nothing of its strings. */
export const USUAL_STRINGS: StringSet = usualStringSet();
