const OR_FILES = " Or record with another program, and choose the files here.";

/** Why the browser gives no input, by the names that the Media Capture standard gives its errors, and the remedy. */
const REFUSALS: Readonly<Record<string, string>> = {
  NotAllowedError:
    "The browser was not allowed to use the input. Allow the microphone for this page, and record again.",
  NotFoundError: "The browser finds no input. Plug the interface in, and record again.",
  NotReadableError: "Another program holds the input. Close it, and record again.",
  OverconstrainedError: "The input that was chosen is gone. Choose another, and record again.",
};

const INSECURE =
  "This browser cannot record here: it gives an input only to a page that came by https, or from this machine itself.";

/** Why this browser cannot record at all, if it cannot. */
export function captureMissing(): string | undefined {
  const canRecord = navigator.mediaDevices?.getUserMedia !== undefined && typeof AudioWorkletNode === "function";
  return canRecord ? undefined : INSECURE + OR_FILES;
}

/**
 * The input as it is, without what would mend a voice in a room.
 * @param deviceId empty: the one that the browser takes by itself
 * @throws Error in words for a person
 */
export async function openInput(deviceId: string): Promise<MediaStream> {
  const audio = {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    channelCount: { ideal: 2 },
    ...(deviceId ? { deviceId: { exact: deviceId } } : {}),
  };
  try {
    return await navigator.mediaDevices.getUserMedia({ audio });
  } catch (error) {
    const { name, message } = error as Error;
    throw new Error((REFUSALS[name] ?? `The input cannot be opened: ${message}.`) + OR_FILES);
  }
}
