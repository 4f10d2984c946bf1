/** What a person may hear or feel, by stable code. */
export const SYMPTOMS = {
  "no-sound": "nothing, or next to nothing, is heard",
  weak: "much quieter than it should be",
  thin: "the lows are missing",
  dark: "the highs are missing",
  bright: "harsher than it should be",
  hum: "hums more than it should",
  "buzz-on-touch": "touching the strings or metal parts makes the noise worse",
  "touch-no-effect": "touching the strings does not quiet the buzz",
  "tone-no-effect": "turning the tone does nothing",
  "tone-as-volume": "turning the tone down takes the sound away",
  "tone-backwards": "the tone is dark at 10 and bright at 0",
  "volume-no-effect": "turning the volume does nothing",
  "volume-backwards": "the volume is loud at 0 and silent at 10",
  "volume-never-silent": "there is sound at volume 0",
} as const;

export type SymptomCode = keyof typeof SYMPTOMS;
export const SYMPTOM_CODES = Object.keys(SYMPTOMS) as [SymptomCode, ...SymptomCode[]];
