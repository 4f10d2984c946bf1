/** What no schema can say, in Markdown, before the calls; a line is a paragraph. */
export const GUIDE = [
  "### Asking",
  'JSON in, JSON out. A call takes a `build`, and `settings` for one setting of its controls or a `sweep` for several: `"sweep": {"lever": [1, 2], "tone": [0, 5, 10]}`. Say neither and every position of the main switch comes with the tone at 0, 1, … 10. Controls left out stand at 10, in position 1, and down.',
  "What cannot be read is refused with problem details (RFC 9457): the field's path, its value and what was expected, 400 or 413. A client with too much under way, or too many requests a minute, is told 429, a service that is full 503, both with `Retry-After`. [Every limit, with its reason](/api/#limits), stands below the calls.",
  "Every answer depends on its request and the code alone: a GET carries an `ETag` and may be cached, and a POST may be sent again. Nothing that is sent is kept.",
  "### The build file",
  '`"presolder": 1` and either a `plan` or `parts` and `wires`; `POST /api/expand` shows the second form of any plan, `POST /api/recognise` the plan of a second form, and the example guards show both. Quantities are SI numbers or text as people write it: `"250k"`, `"4k7"`, `"22n"`, `"0.022uF"`, `"223"`, `"10ft"`. A `cable` that is left out is not there; a `load` that is left out is 1 MΩ.',
  "### Curves",
  "`magnitude` is in dB, where 0 dB is the EMF of a reference single coil, and `phase` in degrees, unwrapped from the lowest frequency asked for. A `peak` is the highest resonance between 20 Hz and 20 kHz that stands at least a quarter of a decibel over the level at 200 Hz; its `level` is counted from there, and so are the 3 dB of the `cutoff`. What is under −200 dB is silence: −300 dB of phase 0. A curve's numbers are given to 0.0001 dB and 0.001°, a coil's own to a digit more, and every digit is the same however it was asked for: alone, in a sweep, over any frequencies.",
  "### Sounds",
  'Full scale (1.0) is one volt. `"level": "true"` keeps the circuit\'s own level: in `float32` a transfer function measured from input to output is the curve itself; in 16 or 24 bits one gain for the whole set, told in the answer, keeps it under −1 dBTP. `"level": "matched"` brings every preview to −26 LUFS (ITU-R BS.1770), or a whole set as much lower as its highest peak needs. The headers `presolder-gain-db`, `presolder-lufs`, `presolder-true-peak-dbtp` and `presolder-delay-samples` tell what was done, and `manifest.json` tells it for a set. Every preview is late by the same 48 samples, above 50 kHz by 144, so that nothing sounds before its cause. It is the curve up to 0.82 of half its rate, above 50 kHz up to 0.94: 18 kHz at 44.1 kHz, 90 kHz at 192 kHz.',
  "A sound of your own comes as a multipart form: the field `request` is the JSON, the field `signal` the WAV file: 8 to 32-bit integers or 32/64-bit floats, one or two channels, each rendered by itself.",
  '`"listening": {"chain": "clean", "drive": 4}` is heard through a clean amplifier and a 12-inch speaker, whose figures stand under `listening` of `GET /api/signals`. The drive, 0 to 10, bends the volts that the jack gives, so that a guard played quieter is heard cleaner; it comes before the level is matched. A cabinet of your own comes in the same form: the field `cabinet`, its impulse response as a WAV file of up to a second, brought to the stated speaker\'s level and to the sound\'s rate. Nothing of this is in a curve; `presolder-listening`, the file\'s name and `manifest.json` name it, and such a preview is some 130 samples later, as `presolder-delay-samples` tells. Begin to listen at a low volume.',
  '`"noise": {"hum": "50", "hiss": true}` adds the room\'s hum and the hiss of circuit and input at their true level to the string: hum by coils with each winding\'s sign, by the loops that the wires enclose as they lie, and by open wires (`"hum": 50`, the older way, is the coils\' alone). `/api/noise` tells how much of each, and what would help. A recording made through a guitar has been through a circuit already: `"recordedWith": {"build": …, "settings": …}` divides that one out, by at most 30 dB, before the new one is applied; the answer tells where the bound holds and what no recording can tell, such as another pickup\'s place on the string. Such previews are 50 ms later, for the filter that undoes the old circuit needs to look ahead.',
].join("\n\n");

/** The order in which the calls are read. */
export const TAGS = [
  { name: "builds", description: "guards: examples, parts, plans, links" },
  { name: "curves", description: "what comes out of the jack, at every frequency" },
  { name: "sound", description: "what it sounds like" },
  { name: "choice", description: "what differs, and which value to buy" },
  { name: "bench", description: "whether it is right, how to solder it, and what is at fault" },
  { name: "measure", description: "pickups, parts and leads measured with a sound card" },
  { name: "health", description: "for whoever runs the service" },
];
