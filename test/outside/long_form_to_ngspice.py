"""A second reading of the long form, sharing no code with the service: build file and settings in, ngspice's answer out.

Reads a JSON list of {"build": long form, "settings": every control} on standard input and writes a JSON list of
[[Hz, real, imaginary], ...] for the voltage at the jack, or null where tip and sleeve are one net. With the argument
"noise" it writes [[Hz, V/sqrt(Hz)], ...] of the thermal noise there instead, all at 20 degrees Celsius.
"""

import json
import math
import os
import re
import subprocess
import sys
import tempfile

PREFIXES = {"p": 1e-12, "n": 1e-9, "u": 1e-6, "µ": 1e-6, "m": 1e-3, "": 1, "k": 1e3, "M": 1e6}
LENGTHS = {"m": 1, "cm": 0.01, "mm": 0.001, "in": 0.0254, "ft": 0.3048, "": 1}
LEVER_5 = {1: [0, 1], 2: [0, 1, 2], 3: [0, 2], 4: [0, 2, 3], 5: [0, 3]}
TOGGLE_3 = {1: [0, 1], 2: [0, 1, 2], 3: [0, 2]}
# Of the network that stands for metal about a coil, which has no noise of its own: so few that theirs is nothing.
METAL_OHMS = 1e-3
MIDPOINTS = {"linear": 0.5, "audio": 0.15, "reverse-audio": 0.85}


def quantity(value):
    if isinstance(value, (int, float)):
        return float(value)
    number, prefix = re.fullmatch(r"([\d.]+)\s*([pnuµmkM]?)(?:F|H|Hz|Ω|F/m|Ω/m)?", value).groups()
    return float(number) * PREFIXES[prefix]


def length(value):
    if isinstance(value, (int, float)):
        return float(value)
    number, unit = re.fullmatch(r"([\d.]+)\s*(m|cm|mm|in|ft|)", value).groups()
    return float(number) * LENGTHS[unit]


def contacts(spec, position):
    if "positions" in spec:
        return spec["positions"][position - 1]
    kind = spec["type"]
    if kind == "lever-5":
        return [[f"{pole}{throw}" for throw in LEVER_5[position]] for pole in "AB"]
    if kind == "toggle-3":
        return [[f"A{throw}" for throw in TOGGLE_3[position]]]
    if kind == "dpdt-on-on-on" and position == 2:
        centre = spec.get("centre", "A1-B2")
        return [["A0", centre[:2]], ["B0", centre[3:]]]
    poles = {"spdt": "A", "dpdt": "AB", "lever-3": "AB", "lever-5-four-pole": "ABCD", "dpdt-on-on-on": "AB"}
    letters = "ABCDEFGH"[: spec["poles"]] if kind == "rotary" else poles[kind]
    throw = 2 if kind == "dpdt-on-on-on" and position == 3 else position
    return [[f"{pole}0", f"{pole}{throw}"] for pole in letters]


def tabled(points, turn):
    for (x0, y0), (x1, y1) in zip(points, points[1:]):
        if x0 <= turn <= x1:
            return y0 + (y1 - y0) * (turn - x0) / (x1 - x0)


def hermite(points, turn):
    """Straight and bent pieces by turns; a bend takes the slopes of its neighbours, at most three times its own."""
    for i, ((x0, y0), (x1, y1)) in enumerate(zip(points, points[1:])):
        if not x0 <= turn <= x1:
            continue
        if i % 2 == 0:
            return y0 + (y1 - y0) * (turn - x0) / (x1 - x0)
        own = (y1 - y0) / (x1 - x0)
        slope = lambda a, b: (b[1] - a[1]) / (b[0] - a[0])
        left = min(3 * own, slope(points[i - 1], points[i]))
        right = min(3 * own, slope(points[i + 1], points[i + 2])) if i + 2 < len(points) else own
        # y = y0 + left u + c2 u^2 + c3 u^3, from the value and the slope at the far end.
        width, u = x1 - x0, turn - x0
        c2 = (3 * own - 2 * left - right) / width
        c3 = (left + right - 2 * own) / width**2
        return y0 + left * u + c2 * u * u + c3 * u**3


# B. Holmes, M. van Walstijn, DAFx-19: a maker's tapers, each by its share of the track at shares of the turn.
TURNS = [0, 0.05, 0.3, 0.51, 0.7, 0.92, 0.97, 1]
SHARES = [
    [0, 0.003, 0.015, 0.057, 0.284, 0.954, 0.999, 1],
    [0, 0.003, 0.028, 0.111, 0.363, 0.959, 0.999, 1],
    [0, 0.003, 0.063, 0.162, 0.41, 0.958, 1, 1],
    [0, 0.004, 0.084, 0.21, 0.443, 0.952, 1, 1],
    [0, 0.002, 0.123, 0.259, 0.501, 0.954, 0.999, 1],
    [0, 0.004, 0.151, 0.311, 0.542, 0.965, 1, 1],
]
TRACKS = [list(zip(TURNS, shares)) for shares in SHARES]
TRACKS.append([(0, 0), (0.05, 0), (0.125, 0.071), (0.932, 0.997), (1, 1)])


def usual(middle, turn):
    if turn in (0, 1):
        return turn
    halves = [hermite(track, 0.5) for track in TRACKS]
    if middle > halves[-1]:
        return 1 - usual(1 - middle, 1 - turn)
    if middle <= halves[0]:
        return hermite(TRACKS[0], turn) ** (math.log(middle) / math.log(halves[0]))
    for low, high, below, above in zip(halves, halves[1:], TRACKS, TRACKS[1:]):
        if low <= middle <= high:
            share = (middle - low) / (high - low)
            return (1 - share) * hermite(below, turn) + share * hermite(above, turn)


def electrical(angles, turn):
    """The turn of a usual shape, flat over a twentieth at either end, for a pot that is flat where its angles differ."""
    flat = (1 - angles["electrical"] / angles.get("mechanical", 300)) / 2
    if flat == 0 and turn in (0, 1):
        return turn
    if turn < flat:
        return turn / flat / 20
    if turn > 1 - flat:
        return 1 - (1 - turn) / flat / 20
    return 0.05 + 0.9 * (turn - flat) / (1 - 2 * flat)


def wiper(track, dial):
    turn, taper = dial / 10, track.get("taper", "linear")
    if not isinstance(taper, list) and "angles" in track:
        turn = electrical(track["angles"], turn)
    share = tabled(taper, turn) if isinstance(taper, list) else usual(track.get("midpoint", MIDPOINTS[taper]), turn)
    end = min(0.5, quantity(track.get("endResistance", 1)) / quantity(track.get("measured", track["resistance"])))
    return min(1 - end, max(end, share))


# tan δ at 1 kHz and 10 kHz, as long_form readers are told in the catalogue.
LOSSES = {
    "film-pet": (0.008, 0.015),
    "film-pp": (0.0005, 0.0008),
    "paper": (0.005, 0.01),
    "mica": (0.001, 0.001),
    "ceramic-c0g": (0.001, 0.001),
    "ceramic-x7r": (0.025, 0.025),
    "ceramic-z5u": (0.03, 0.03),
    "ceramic-y5v": (0.03, 0.03),
}
RELAXING = [100.0, 1e3, 1e4]


def determinant(rows):
    if len(rows) == 1:
        return rows[0][0]
    minor = lambda skip: [[value for i, value in enumerate(row) if i != skip] for row in rows[1:]]
    return sum((-1) ** i * value * determinant(minor(i)) for i, value in enumerate(rows[0]))


def relaxing(cap):
    """Farads of the cap's stiff share, then (ohms, farads) of branches that make its loss at 100 Hz, 1 and 10 kHz."""
    own, farads = cap.get("lossFactor"), quantity(cap["capacitance"])
    tan = (own, own) if own is not None else LOSSES.get(cap.get("dielectric"), (0, 0))
    if tan[0] == 0:
        return farads, []
    debye = lambda hertz: [1] + [1 / (1 + 1j * hertz / at) for at in RELAXING]
    rows = [[share.real for share in debye(1e3)]]
    rows += [[-complex(s).imag - t * complex(s).real for s in debye(at)] for at, t in zip(RELAXING, (tan[0], *tan))]
    whole = determinant(rows)
    # Cramer's rule, with 1 on the right of the first row and nothing on that of the others.
    shares = [
        determinant([row[:i] + [1.0 if k == 0 else 0.0] + row[i + 1 :] for k, row in enumerate(rows)]) / whole
        for i in range(4)
    ]
    branches = [(1 / (2 * math.pi * at * share * farads), share * farads) for at, share in zip(RELAXING, shares[1:])]
    return shares[0] * farads, branches


class Reading:
    def __init__(self, build, settings):
        self.build, self.settings, self.parent = build, settings, {}
        self.cards, self.names = [], {}
        self.alias = {}
        for name, part in build["parts"].items():
            if part["kind"] == "pickup" and len(part["coils"]) == 1:
                (coil,) = part["coils"]
                self.alias[f"{name}.{coil}.finish"] = f"{name}.hot"
                self.alias[f"{name}.{coil}.start"] = f"{name}.ground"
        (self.jack,) = [name for name, part in build["parts"].items() if part["kind"] == "jack"]

    def find(self, lug):
        lug = self.alias.get(lug, lug)
        while self.parent.setdefault(lug, lug) != lug:
            lug = self.parent[lug]
        return lug

    def join(self, a, b):
        self.parent[self.find(a)] = self.find(b)

    def node(self, lug):
        net = self.find(lug)
        if net == self.find(f"{self.jack}.sleeve"):
            return "0"
        tip = "tip" if "resistance" in self.build.get("cable", {}) else "out"
        return tip if net == self.find(f"{self.jack}.tip") else self.names.setdefault(net, f"n{len(self.names)}")

    def card(self, kind, a, b, value):
        if a != b:
            self.cards.append(f"{kind}{len(self.cards)} {a} {b} {value}")

    def join_contacts(self, spec, position, prefix):
        for group in contacts(spec, position):
            for lug in group[1:]:
                self.join(prefix + group[0], prefix + lug)

    def join_all(self):
        for wire in self.build["wires"]:
            self.join(*wire) if isinstance(wire, list) else self.join(wire["from"], wire["to"])
        for name, part in self.build["parts"].items():
            if part["kind"] == "switch":
                self.join_contacts(part, self.settings[name], f"{name}.")
            if part["kind"] == "pot" and "drives" in part:
                spec = part["drives"] if isinstance(part["drives"], dict) else {"type": part["drives"]}
                last = 3 if spec.get("type") == "dpdt-on-on-on" else 2
                position = {"down": 1, "centre": 2, "up": last}[self.settings[f"{name}.s"]]
                self.join_contacts(spec, position, f"{name}.s.")

    def tracks(self):
        """Resistors of the pots; those of 0 Ω join their lugs."""
        found = []
        for name, part in self.build["parts"].items():
            if part["kind"] != "pot":
                continue
            dial = self.settings[name]
            gangs = [(part, ("1", "2", "3"))] + [(gang, ("b1", "b2", "b3")) for gang in part.get("gangs", [])]
            for number, (track, (one, two, three)) in enumerate(gangs):
                if number == 0 and part.get("noLoad") and dial == 10:
                    self.join(f"{name}.2", f"{name}.3")
                    continue
                ohms, below = quantity(track.get("measured", track["resistance"])), wiper(track, dial)
                for a, b, value in ((one, two, below * ohms), (two, three, (1 - below) * ohms)):
                    if value == 0:
                        self.join(f"{name}.{a}", f"{name}.{b}")
                    else:
                        found.append((f"{name}.{a}", f"{name}.{b}", value))
        return found

    def emf(self, to, at, drive, metals):
        """An EMF behind metal, each of which leaves a share a of it and lets the rest through a low-pass."""
        metals = metals if isinstance(metals, list) else [metals]
        if not metals:
            self.card("V", to, at, drive)
            return
        name = f"m{len(self.cards)}"
        self.card("V", f"{name}_0", "0", drive)
        for index, metal in enumerate(metals):
            before, low, after = f"{name}_{index}", f"{name}_{index}low", f"{name}_{index + 1}"
            share = 10 ** (-metal["depth"] / 20) if "depth" in metal else 0
            corner = quantity(metal["shelf"]) * math.sqrt(share) if "depth" in metal else quantity(metal["pole"])
            self.card("R", before, low, METAL_OHMS)
            self.card("C", low, "0", 1 / (2 * math.pi * corner * METAL_OHMS))
            self.card("E", after, f"{after}sum", f"{low} 0 {1 - share}")
            self.card("E", f"{after}sum", "0", f"{before} 0 {share}")
        self.card("E", to, at, f"{name}_{len(metals)} 0 1")

    def coil(self, coil, start, finish):
        """EMF, wire, inductance and loss from start to finish; gives the card of the inductance and the EMF's sign."""
        sign = 1 if (coil.get("winding", "forward") == "forward") == (coil.get("magnet", "north") == "north") else -1
        if quantity(coil.get("capacitance", 0)) > 0:
            self.card("C", start, finish, quantity(coil["capacitance"]))
        emf, wire = f"e{len(self.cards)}", f"w{len(self.cards)}"
        self.emf(emf, start, f"DC 0 AC {sign * coil.get('output', 1)}", coil.get("shielding", []))
        self.card("R", emf, wire, quantity(coil["resistance"]))
        loss = coil.get("loss")
        losses = loss if isinstance(loss, list) else [] if loss is None else [{"resistance": loss}]
        sections = [each for each in losses if "inductance" in each]
        nodes = [wire] + [f"s{len(self.cards)}_{index}" for index in range(len(sections))] + [finish]
        inductance = f"L{len(self.cards)}"
        self.card("L", nodes[0], nodes[1], quantity(coil["inductance"]))
        for each in losses:
            if "inductance" not in each:
                self.card("R", wire, finish, quantity(each["resistance"]))
        for section, a, b in zip(sections, nodes[1:], nodes[2:]):
            self.card("L", a, b, quantity(section["inductance"]))
            self.card("R", a, b, quantity(section["resistance"]))
        return inductance, sign

    def pickup(self, name, part):
        coils = list(part["coils"].items())
        if len(coils) == 1:
            ends = [("ground", "hot")]
        elif part.get("conductors") == 2:
            alike = len({coil.get("winding", "forward") for _, coil in coils}) == 1
            ends = [("ground", "!middle"), ("hot", "!middle") if alike else ("!middle", "hot")]
        else:
            ends = [(f"{coil}.start", f"{coil}.finish") for coil, _ in coils]
        made = [
            self.coil(coil, self.node(f"{name}.{start}"), self.node(f"{name}.{finish}"))
            for (_, coil), (start, finish) in zip(coils, ends)
        ]
        if part.get("coupling"):
            (first, sign), (second, other) = made
            self.cards.append(f"K{len(self.cards)} {first} {second} {part['coupling'] * sign * other}")

    def cap(self, name, part):
        a, b = self.node(f"{name}.a"), self.node(f"{name}.b")
        stiff, branches = relaxing(part)
        self.card("C", a, b, stiff)
        for index, (ohms, farads) in enumerate(branches):
            if a != b:
                self.card("R", a, f"relax_{name}_{index}", ohms)
                self.card("C", f"relax_{name}_{index}", b, farads)

    def netlist(self):
        self.join_all()
        tracks = self.tracks()
        tip, sleeve = f"{self.jack}.tip", f"{self.jack}.sleeve"
        if self.find(tip) == self.find(sleeve):
            return None
        for a, b, ohms in tracks:
            self.card("R", self.node(a), self.node(b), ohms)
        for name, part in self.build["parts"].items():
            if part["kind"] == "pickup":
                self.pickup(name, part)
            if part["kind"] == "cap":
                self.cap(name, part)
            if part["kind"] == "resistor":
                self.card("R", self.node(f"{name}.a"), self.node(f"{name}.b"), quantity(part["resistance"]))
        cable, load = self.build.get("cable"), self.build.get("load", {})
        if cable:
            self.card("C", "out", "0", length(cable["length"]) * quantity(cable["capacitance"]))
            if "resistance" in cable:
                self.card("R", "tip", "out", length(cable["length"]) * quantity(cable["resistance"]))
        self.card("R", "out", "0", quantity(load.get("resistance", 1e6)))
        if quantity(load.get("capacitance", 0)) > 0:
            grid = "grid" if "stopper" in load else "out"
            self.card("R", "out", "grid", quantity(load.get("stopper", 0))) if grid == "grid" else None
            self.card("C", grid, "0", quantity(load["capacitance"]))
        return self.cards + self.ties()

    def ties(self):
        """A resistor to ground for every part that hangs apart: it carries no current, and ngspice needs it."""
        group = {"0": "0"}

        def root(node):
            while group.setdefault(node, node) != node:
                node = group[node]
            return node

        for card in self.cards:
            _, a, b, *_ = card.split()
            if card[0] != "K":
                group[root(a)] = root(b)
        apart = sorted({root(node) for node in list(group)} - {root("0")})
        return [f"Rtie{index} {node} 0 1" for index, node in enumerate(apart)]


def analysis_of(cards, out):
    if not NOISE:
        return ["ac dec 12 20 20k", f"wrdata {out} v(out)"]
    source = next(card.split()[0] for card in cards if card[0] == "V")
    return [f"noise v(out) {source} dec 12 20 20k", "setplot previous", f"wrdata {out} onoise_spectrum"]


def simulate(netlists):
    """The answer to each netlist, all from one process: ngspice starts far longer than it solves."""
    with tempfile.TemporaryDirectory() as directory:
        outs = [os.path.join(directory, f"{index}.txt") for index in range(len(netlists))]
        control = ["second reading", ".control", "set numdgt=15"]
        for index, (cards, out) in enumerate(zip(netlists, outs)):
            deck = os.path.join(directory, f"{index}.cir")
            with open(deck, "w", encoding="utf8") as file:
                file.write("\n".join(["second reading", ".options temp=20 tnom=20", *cards, ".end", ""]))
            control += [f"source {deck}", *analysis_of(cards, out), "destroy all", "remcirc"]
        main = os.path.join(directory, "main.cir")
        with open(main, "w", encoding="utf8") as file:
            file.write("\n".join([*control, "quit", ".endc", ".end", ""]))
        subprocess.run(["ngspice", "-b", main], capture_output=True, check=False)
        answers = []
        for out in outs:
            with open(out, encoding="utf8") as file:
                answers.append([[float(word) for word in line.split()[:COLUMNS]] for line in file])
        return answers


NOISE = sys.argv[1:] == ["noise"]
COLUMNS = 2 if NOISE else 3
NETLISTS = [Reading(case["build"], case["settings"]).netlist() for case in json.load(sys.stdin)]
ANSWERS = iter(simulate([cards for cards in NETLISTS if cards is not None]))
json.dump([None if cards is None else next(ANSWERS) for cards in NETLISTS], sys.stdout)
