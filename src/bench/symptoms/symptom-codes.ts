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
  crackle: "crackles or cuts out now and then",
  "crackle-on-lever": "crackles or cuts out when the switch is worked",
  "crackle-on-lead": "crackles or cuts out when the instrument lead or its plug moves",
  "pot-scratchy": "a pot crackles when it is turned",
  "pot-turns": "a pot's whole body turns with its knob",
  howl: "howls or squeals at high volume, other than a string's own feedback",
  "hum-on-letting-go": "hums or buzzes only while nobody touches the strings",
} as const;

export type SymptomCode = keyof typeof SYMPTOMS;
export const SYMPTOM_CODES = Object.keys(SYMPTOMS) as [SymptomCode, ...SymptomCode[]];
