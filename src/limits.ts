/** Bounds on what one request may ask, each with its reason. */

/** The largest customary guards (HSH, four-pole lever, four push-pulls) stay under 40 parts; the rest is room for extras. */
export const MAX_PARTS = 100;
/** A lug meets two or three wires; 400 is ten times the busiest customary guard. */
export const MAX_WIRES = 400;
/** 5 positions × 11 tones × 9 volumes and one more axis; every setting is a curve of its own in memory. */
export const MAX_SETTINGS = 1000;
/** Finer than a screen or the ear resolves over ten octaves. */
export const MAX_FREQUENCIES = 8192;
/** One minute is longer than any audition; a set of 55 of them is already 55 minutes of sound. */
export const MAX_AUDIO_SECONDS = 60;
/** A guitar is mono; two channels let a stereo file through unharmed. */
export const MAX_AUDIO_CHANNELS = 2;
/** The telephone's rate: below it nothing of a pickup's peak is left. */
export const MIN_SAMPLE_RATE_HZ = 8_000;
/** The highest that interfaces record at; a guitar has nothing above a tenth of it. */
export const MAX_SAMPLE_RATE_HZ = 192_000;
/** Files hold ±1 at full scale; a peak this far above it is a file of unscaled integers or of rubbish, which would only clip. */
export const MAX_SAMPLE_AMPLITUDE = 256;
/** Ten readings for every lug of the busiest customary guard would not be read by anybody. */
export const MAX_PROBES = 200;
/** A minute of two channels of 64-bit floats at 192 kHz, and room for a header. */
export const MAX_UPLOAD_BYTES = 60 * 2 * 8 * 192_000 + 65_536;
/** A code travels in the address of a request, for which Node's HTTP parser allows 16 KiB with all headers. */
export const MAX_LINK_CODE_CHARS = 12_000;
/** What a code may inflate to: the largest build file is a third of it, and a bomb is cut off here. */
export const MAX_LINK_JSON_BYTES = 262_144;
/** Two hours: the default sweep of a minute's sound, twice. */
export const MAX_SET_SECONDS = 7_200;
/** The classic ZIP format counts to 4 GiB; half of it is beyond any listening. */
export const MAX_SET_BYTES = 2 ** 31;
/** A worker keeps its phrases and filters outside this heap; builds, networks and answers fit many times over. */
export const MAX_WORKER_HEAP_MIB = 512;
/** Requests that render or solve at a time, waiting ones included; whoever comes after is better told to come back. */
export const MAX_RENDERS = 64;
/** Every request has at most two jobs under way. */
export const MAX_WAITING_JOBS = 2 * MAX_RENDERS;
/** Below this many draws the 5 % and 95 % bands themselves still move by a tenth of their width. */
export const MIN_DRAWS = 2_000;
/** Ten times the default moves no band that can be seen. */
export const MAX_DRAWS = 20_000;
/** Guards times settings of one comparison: some seconds of one worker. */
export const MAX_DRAWN_CURVES = 150_000;
/** A browser holds six connections to one host; a second window and a script beside it make sixteen. */
export const MAX_RENDERS_PER_CLIENT = 16;
/** A set holds up to 24 MiB of sound while its caller reads. */
export const MAX_SETS = 16;
/** Five hundred a second: what one machine answers. Below it the fair queue shares the work; above it a client only floods. */
export const MAX_REQUESTS_PER_MINUTE = 30_000;
/** A quarter of a second of delay is felt; twice that, measured over a second, is too much work. */
export const MAX_EVENT_LOOP_DELAY_MS = 500;
/** Beyond it the next upload or set could make the system end the process. */
export const MAX_MEMORY_FRACTION = 0.8;
/** The largest build file stays under 100 kB; a megabyte leaves room for a second one and a long sweep. */
export const MAX_BODY_BYTES = 1 << 20;
/** A build file nests eight deep and a request around it two more; code that walks deeper would run out of stack. */
export const MAX_JSON_DEPTH = 32;
/** All uploads in memory at a time: two of the longest, or thirty of an ordinary minute in stereo. */
export const MAX_UPLOADS_BYTES = 2 * MAX_UPLOAD_BYTES;
/** A minute of sound over a slow line, and still no connection held open for nothing. */
export const REQUEST_TIMEOUT_MS = 300_000;
/** Headers are a few kilobytes; who needs longer for them is holding the connection open. */
export const HEADERS_TIMEOUT_MS = 15_000;
/** An answer may take its caller minutes to read; silence this long means nobody is there. */
export const CONNECTION_TIMEOUT_MS = 600_000;
/** Numbers in one answer's curves: 20 MB of text, and twenty times the default sweep. */
export const MAX_POINTS = 1_000_000;
/** Combinations of a search for values: some seconds of one worker; E12 over two decades of three parts are 15 625. */
export const MAX_TRIED_COMBINATIONS = 40_000;
/** Each code in a few positions is all that can be heard of one guard; each is listened for in every faulty guard. */
export const MAX_SYMPTOMS = 20;
/** 10 Hz steps to 25 kHz; a fit of them takes a few seconds of one worker. */
export const MAX_FIT_POINTS = 2_500;
