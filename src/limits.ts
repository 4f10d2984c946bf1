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
/** Lugs that carry anything, each an unknown where hum is solved wire by wire; the busiest customary guard has a hundred. */
export const MAX_WIRED_LUGS = 400;
/** Every position with the tone at 0 to 10 and some more; each is told of a guard and four changes of it. */
export const MAX_NOISE_SETTINGS = 200;
/** Where people may be; a guitar on a transformer sees some tens (ICNIRP's reference level at 50 Hz is 200, from memory). */
export const MAX_MICROTESLA = 1000;
/** ICNIRP's reference level for workers at 50 Hz (from memory). */
export const MAX_VOLTS_PER_METRE = 10_000;
/** Ten times as rough as rectified mains; more would be another spectrum. */
export const MAX_HARMONICS = 10;
/** A microvolt in a bandwidth of 1 Hz would be louder than a string. */
export const MAX_NOISE_NANOVOLTS = 1000;
/** A nanoampere in 1 Hz across a pickup likewise. */
export const MAX_NOISE_PICOAMPERES = 1000;
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
/** A cabinet in a room has died away in half of it; a longer response is a hall's. */
export const MAX_CABINET_SECONDS = 1;
/** Half an hour: the default sweep of half a minute; each second takes a driven amplifier some ten milliseconds of one worker. */
export const MAX_DRIVEN_SET_SECONDS = 1_800;
/** Guards of one shelf link: some forty fit into a code, and more where they are nearly alike. */
export const MAX_LINK_GUARDS = 200;
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
/** tan δ of a cap: a lossier one is a fault, and no longer a few relaxing branches beside a capacitance. */
export const MAX_LOSS_FACTOR = 0.2;
/** A question of a sentence or two. */
export const MAX_QUESTION_CHARS = 500;
/** A guard has one or two tone caps; each is tried in every setting with every dielectric, five times. */
export const MAX_ASKED_CAPS = 4;
/** Five hundred a second: what one machine answers. Below it the fair queue shares the work; above it a client only floods. */
export const MAX_REQUESTS_PER_MINUTE = 30_000;
/** Two seconds of what one machine answers: whoever comes after would wait longer than is useful. */
export const MAX_REQUESTS_UNDER_WAY = 1_000;
/** Beyond it the next upload or set could make the system end the process. */
export const MAX_MEMORY_FRACTION = 0.8;
/** The largest build file stays under 100 kB; a megabyte leaves room for a second one and a long sweep. */
export const MAX_BODY_BYTES = 1 << 20;
/** A build file nests eight deep and a request around it two more; code that walks deeper would run out of stack. */
export const MAX_JSON_DEPTH = 32;
/** Lists and objects of one body: two hundred guards, lug by lug, have twenty thousand; each costs its reader a microsecond. */
export const MAX_JSON_NESTS = 50_000;
/** Values of one body: two hundred guards have fifty thousand. */
export const MAX_JSON_VALUES = 100_000;
/** Entries of one list: every frequency that may be asked for, and the longest list that is nothing but wrong still is refused at once. */
export const MAX_LIST_ENTRIES = 10_000;
/** Keys of one object: ten times the parts of the largest guard. */
export const MAX_OBJECT_KEYS = 1_000;
/** All uploads in memory at a time: three of the longest, or forty-five of an ordinary minute in stereo. */
export const MAX_UPLOADS_BYTES = 3 * MAX_UPLOAD_BYTES;
/** Uploads of one client in memory at a time, so that no client keeps all others from sending: a longest one and its small company. */
export const MAX_UPLOADS_BYTES_PER_CLIENT = MAX_UPLOAD_BYTES + (1 << 24);
/** A body that comes slower, over ten seconds and more, is held open for nothing: a tenth of what a telephone's slowest data line brings. */
export const MIN_BODY_BYTES_PER_SECOND = 2_000;
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
/** Guards of a drawer that are heard: ten to twenty milliseconds each of one worker, and what a hundred pots and caps add is little. */
export const MAX_HEARD_GUARDS = 400;
/** Exchanges of one part that are heard, each in every position: a few seconds of one worker. */
export const MAX_HEARD_EXCHANGES = 200;
/** Guards that hold parts of one drawer: a collector's, each with its build file in one request. */
export const MAX_SOLDERED_GUARDS = 40;
/** Wirings of a drawer that are counted; beyond it the answer says "more than". */
export const MAX_COUNTED_WIRINGS = 20_000;
/** Each code in a few positions is all that can be heard of one guard; each is listened for in every faulty guard. */
export const MAX_SYMPTOMS = 20;
/** 10 Hz steps to 25 kHz; a fit of them takes a few seconds of one worker. */
export const MAX_FIT_POINTS = 2_500;
/** Of a control, a part or a coil: a label as long as this fills a line of a sheet. */
export const MAX_NAME_CHARS = 80;
/** A part's name, a dot and a lug's; the longest that a build file allows. */
export const MAX_LUG_NAME_CHARS = 120;
/** Of a dial, a position or a quantity as it is written; "0.022 microfarads" is 17. */
export const MAX_VALUE_CHARS = 40;
/** What a person writes beside a reading, for their own eyes: two lines. */
export const MAX_LABEL_CHARS = 200;
/** The page's own keys are words such as "levelView"; a sentence is none. */
export const MAX_VIEW_KEY_CHARS = 60;
/** Longer than the longest name of an example. */
export const MAX_SCENARIO_ID_CHARS = 100;
/** Hz. Ten times what anybody hears, and past the resonance of any coil. */
export const MAX_FREQUENCY_HZ = 200_000;
/** Twelve strings are the most that a guitar customarily has. */
export const MAX_STRINGS = 12;
/** Three octaves; fingerboards end at 24 to 27. */
export const MAX_FRET = 36;
/** Points to draw a band from; every one is sorted over all draws. */
export const MAX_BAND_POINTS = 512;
/** With fewer a band has no shape. */
export const MIN_BAND_POINTS = 8;
/** The largest positive integer of 32 bits, which the generator's state holds. */
export const MAX_SEED = 0x7fff_ffff;
/** Parts of one search that may change; with six the combinations are past trying all of them. */
export const MAX_FREE_PARTS = 6;
/** Values to try for one part: E24 over eight decades. */
export const MAX_CANDIDATES = 200;
/** Settings whose mean brightness is wished for: twice a lever's positions. */
export const MAX_MODELS = 10;
/** Resonances measured by hand with known capacitors; a dozen take an evening. */
export const MAX_FIT_READINGS = 100;
/** Characters of a table of measurements: 200 for each of its lines. */
export const MAX_FIT_TABLE_CHARS = 500_000;
/** Of one part in the drawer: a shop's bag. */
export const MAX_DRAWER_QUANTITY = 1000;
/** Different parts that one person owns: a workshop's cabinet of small drawers holds half as many. */
export const MAX_DRAWER_ITEMS = 300;
/** Kits on the shelf or in a shop's list; the shopping list tries them all together. */
export const MAX_DRAWER_KITS = 20;
/** Reels of wire: four kinds in every colour that is sold, and some. */
export const MAX_DRAWER_WIRES = 60;
/** Of one part, in any currency; sums of a whole list stay exact to a hundredth. */
export const MAX_PRICE = 1_000_000;
/** Of wire: more than anybody has on the bench. */
export const MAX_REELS = 40;
/** Lugs of one switch: the largest rotary of a build file, eight poles of twelve throws. */
export const MAX_SWITCH_LUGS = 104;
/** Positions of one switch; a contact table of one's own in a build file has as many at most. */
export const MAX_SWITCH_POSITIONS = 24;
/** Rows of lugs, and lugs in a row: the largest rotary's laid out in either. */
export const MAX_LUG_GRID = 104;
/** Touches told of one switch: every pair of the largest rotary's lugs once would be 5 356, and nobody's patience lasts. */
export const MAX_TOUCHES = 2_000;
/** Faults that one refusal names; whoever has more mends these first. */
export const MAX_FAULTS_TOLD = 100;
/** Characters of what one fault says, and of where it stands; beyond it there is only what was sent. */
export const MAX_FAULT_CHARS = 1_000;
/** Characters of a refusal's one sentence; `errors` has them all. */
export const MAX_DETAIL_CHARS = 2000;
/** Of a guard's drawing for paper; the busiest customary guard has a third of them. */
export const MAX_DRAWING_SHAPES = 6_000;
/** Of one line of a drawing: a wire that goes round everything takes a tenth of it. */
export const MAX_PATH_CHARS = 4_000;
/** Of a number in a drawing's line, in its own units, either way: a thousand kilometres in millimetres, and far below what a PDF holds. */
export const MAX_PATH_NUMBER = 1e9;
/** Of a drawing's box, in its own units: what is smaller is no drawing, and its scale on the page no number of a PDF. */
export const MIN_DRAWING_SIDE = 1e-3;
/** What a person writes about a guard: six lines of a page. */
export const MAX_NOTES_CHARS = 600;
/** A body has some six: pickups', controls', switch's, jack's and springs' holes; the rest is room for steps in them. */
export const MAX_CAVITIES = 20;
/** Of one line: a traced cavity takes some forty clicks. */
export const MAX_OUTLINE_POINTS = 200;
/** That hold a guard, or one part; the busiest guards have a dozen. */
export const MAX_SCREWS = 40;
/** Metres from the bridge or the centre line: no body is half as large. */
export const MAX_REACH_METRES = 1;
/** Of a part, a cavity, a plate or a thread, in metres: no body is as thick. */
export const MAX_DEPTH_METRES = 0.2;
/** Of A4: the face of a whole body takes twelve. */
export const MAX_TEMPLATE_PAGES = 30;
/** Sides of parts against sides of cavities and of other parts: at worst some five seconds of one worker; a busy guard has half a million. */
export const MAX_ROOM_PAIRS = 1_000_000;
/** Two coils with every end brought out, and a drain. */
export const MAX_LEADS = 5;
/** A coil has two ends. */
export const MIN_LEADS = 2;
/** Of each sort: every pair of five leads under both rows, and each of them three times over. */
export const MAX_LEAD_TESTS = 60;
/** Of a lead or a row of poles: "white with a black stripe" is 25. */
export const MAX_LEAD_NAME_CHARS = 30;
/** Beyond these nobody reads; the answer says how likely all others are together. */
export const MAX_LABELLINGS_LISTED = 24;
/** Screws are turned on all pickups of a guard at once; the busiest customary guard has four, and the rest is room. */
export const MAX_MOVED_PICKUPS = 6;
/** Six positions at ten heights would take a day to record; each is weighed many times over. */
export const MAX_HEIGHT_ROWS = 60;
/** Of one string in a row: six strings so often, each ringing for its second, fill the longest recording. */
export const MAX_PLUCKS = 9;
/** Of a question about dielectrics: settings to be solved times their network's size cubed; the largest customary guard takes a sixth for each cap, and the most that is granted half a minute. */
export const MAX_DIELECTRIC_WORK = 3e8;
/** About one coil: its poles, a base plate, a cover. */
export const MAX_METALS = 3;
/** Of a meter's display: bench meters of six and a half digits show two millions. */
export const MAX_METER_COUNTS = 2_000_000;
/** Of a meter: one a decade from 1 Ω to 10 GΩ. */
export const MAX_METER_RANGES = 12;
/** Of a meter's probes held together: more than any leads have, and a sound joint could not be told from a bad one. */
export const MAX_METER_LEADS_OHMS = 10;
/** Rows of poles times settings of one tap test: five positions of ten coils, and a few minutes of tapping. */
export const MAX_TAP_STEPS = 50;
/** Of one examination: every position of a lever, and both ends of every knob in one of them. */
export const MAX_TAKES = 24;
/** Of a take of taps: so many steps at four seconds each, each after a move of three, and half a minute before, between and after. */
export const MAX_TAP_SECONDS = MAX_TAP_STEPS * (4 + 3) + 30;
/** Wirings with their pickups that one search for a wanted sound looks at: some seconds of one worker. */
export const MAX_WANTED_SHAPES = 200;
/** Guards with their values that it tries: some seconds more. */
export const MAX_WANTED_TRIALS = 1_500;
/** Of wishes in words: five lines; the longest wish for every position of a lever is three. */
export const MAX_WISH_CHARS = 500;
/** Places that are wished for: a lever's positions, its pickups alone and in pairs, and some. */
export const MAX_WISHES = 12;
/** Words for one place: more than twice what anybody says of one sound. */
export const MAX_ASKS = 8;
/** Samples of all channels that one request may bring to be measured by: so many takes and a gain of 24 s in stereo at 48 kHz, and half a minute of one worker. */
export const MAX_MEASURED_SAMPLES = 60_000_000;
