/** Most words of sound have never been measured: their numbers are what curves of customary guards suggest. */
export const COMMON_PRACTICE =
  "common practice, no source; the numbers are this service's own choice and may be changed";

export const BRIGHTNESS_STUDIES =
  "that listeners order sounds by the weight of their treble first of all: J. M. Grey and J. W. Gordon, J. Acoust. Soc. Am. 63, 1493," +
  " 1978 (from memory); the numbers are this service's own choice and may be changed";

export const UNDER_ONE_COIL =
  "about what two unlike coils leave that are to cancel (common practice, no source); the number is this service's own choice";
