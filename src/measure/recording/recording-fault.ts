import { faultAt, type PresolderError } from "../../errors.ts";

/** Why a recording cannot be measured by, and what to do about it. */
const FAULTS = {
  silence: "is silent: nothing was recorded. Choose the input that the lead is in, turn its gain up, and record again",
  short:
    "ends before the signal does. Start to record first, then play, and stop when the signal has been over for a second",
  other:
    "does not hold the measuring signal: it is something else, or too much noise lies over it. Play the signal file itself, with no effect on, and turn the output up",
  rate: "runs at another rate than it says: it was recorded or converted at one sample rate and is labelled with another. Record, and save, at the rate the project is set to",
  lost: "has lost samples in more than one place. Close other programs, make the interface's buffer larger, play and record through one device, and record again",
  clipped: "is clipped in all three passes. Turn the input's gain down until the loudest pass stays under full scale",
  gain: "changes its gain by itself: the three passes are played 6 dB apart and came back otherwise. Switch automatic gain, limiter, noise reduction and echo cancelling off",
  mono: "has the same in both channels, sample by sample: one input was recorded twice. Record both inputs, each as a channel of its own, and save in stereo",
  kind: "holds the other of the two measuring signals. Say which of them was played",
  unsteady:
    "differs from pass to pass by more than noise explains. Let nothing touch the pickup, the exciter or a plug while it records",
} as const;

export type RecordingFault = keyof typeof FAULTS;

/**
 * @param path the field that brought the recording
 * @param figures what was found, in a few words
 */
export function recordingFault(path: string, fault: RecordingFault, figures?: string): PresolderError {
  const found = figures === undefined ? "" : ` (${figures})`;
  return faultAt("DATA_INSUFFICIENT", path, `the recording ${FAULTS[fault]}${found}`);
}
