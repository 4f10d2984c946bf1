"""Solves linear networks to 50 digits with mpmath, by plain nodal analysis of its own; it shares no code with the service.

Reads JSON lines {"network": {nodeCount, elements, mutuals, sourceCount}, "output": node, "frequencies": [Hz, ...]} on standard
input. Writes for each a JSON line [[real, imaginary of source 0, ... of source 1, ...], ...], one list a frequency: the voltage
from the output node to node 0 for a unit EMF of each source in turn.
"""

import json
import sys

from mpmath import mp, mpc, mpf

mp.dps = 50


def reference_nodes(count, elements):
    """Node 0, and the first node of every part of the network that does not hang together with it."""
    parts = list(range(count))

    def find(node):
        while parts[node] != node:
            node = parts[node]
        return node

    for element in elements:
        first, second = sorted((find(element["a"]), find(element["b"])))
        parts[second] = first
    return {node for node in range(count) if find(node) == node}


def solution(matrix, sides):
    """Gauss elimination with the largest pivot of each column, for several right-hand sides at once."""
    size = len(matrix)
    rows = [matrix[row] + [side[row] for side in sides] for row in range(size)]
    for k in range(size):
        best = max(range(k, size), key=lambda row: abs(rows[row][k].real) + abs(rows[row][k].imag))
        rows[k], rows[best] = rows[best], rows[k]
        inverse = 1 / rows[k][k]
        for row in range(k + 1, size):
            if rows[row][k] == 0:
                continue
            factor = rows[row][k] * inverse
            rows[row] = rows[row][: k + 1] + [
                value if above == 0 else value - factor * above for value, above in zip(rows[row][k + 1 :], rows[k][k + 1 :])
            ]
    results = []
    for side in range(len(sides)):
        x = [mpc(0)] * size
        for row in range(size - 1, -1, -1):
            rest = rows[row][size + side] - sum(
                (rows[row][column] * x[column] for column in range(row + 1, size) if rows[row][column] != 0), mpc(0)
            )
            x[row] = rest / rows[row][row]
        results.append(x)
    return results


def joined_nodes(count, elements):
    """The node that stands for each, resistors of 0 ohms being ideal joints."""
    joint = list(range(count))

    def find(node):
        while joint[node] != node:
            node = joint[node]
        return node

    for element in elements:
        if element["kind"] == "resistor" and element["ohms"] == 0:
            first, second = sorted((find(element["a"]), find(element["b"])))
            joint[second] = first
    return [find(node) for node in range(count)]


def transfers(network, output, hertz):
    joint = joined_nodes(network["nodeCount"], network["elements"])
    elements = [{**element, "a": joint[element["a"]], "b": joint[element["b"]]} for element in network["elements"]]
    references = reference_nodes(network["nodeCount"], elements)
    place = {}
    for node in range(network["nodeCount"]):
        if node not in references and joint[node] == node:
            place[node] = len(place)
    branches = [index for index, element in enumerate(elements) if element["kind"] == "branch"]
    row_of = {index: len(place) + number for number, index in enumerate(branches)}
    size = len(place) + len(branches)
    omega = 2 * mp.pi * mpf(hertz)
    matrix = [[mpc(0)] * size for _ in range(size)]

    def stamp(a, b, admittance):
        for one, two in ((a, b), (b, a)):
            if one in place:
                matrix[place[one]][place[one]] += admittance
                if two in place:
                    matrix[place[one]][place[two]] -= admittance

    sides = [[mpc(0)] * size for _ in range(network["sourceCount"])]
    for index, element in enumerate(elements):
        a, b = element["a"], element["b"]
        if element["kind"] == "resistor":
            if a != b:
                stamp(a, b, 1 / mpf(element["ohms"]))
        elif element["kind"] == "capacitor":
            if a != b:
                stamp(a, b, mpc(0, omega * mpf(element["farads"])))
        else:
            row = row_of[index]
            for node, sign in ((a, 1), (b, -1)):
                if node in place:
                    matrix[place[node]][row] += sign
                    matrix[row][place[node]] += sign
            matrix[row][row] -= mpc(element["ohms"], omega * mpf(element["henries"]))
            if element.get("source") is not None:
                # v(b) - v(a) = EMF with no current.
                sides[element["source"]][row] = mpc(-1)
    for mutual in network["mutuals"]:
        first, second = row_of[mutual["first"]], row_of[mutual["second"]]
        matrix[first][second] -= mpc(0, omega * mpf(mutual["henries"]))
        matrix[second][first] -= mpc(0, omega * mpf(mutual["henries"]))
    if joint[output] not in place:
        return [mpc(0)] * network["sourceCount"]
    return [x[place[joint[output]]] for x in solution(matrix, sides)]


for line in sys.stdin:
    job = json.loads(line)
    answers = [transfers(job["network"], job["output"], hertz) for hertz in job["frequencies"]]
    print(
        json.dumps([[float(mp.nstr(part, 17)) for value in values for part in (value.real, value.imag)] for values in answers]),
        flush=True,
    )
