"""Reads pairs of outlines in millimetres as JSON and answers what Shapely makes of each."""

import json
import sys

from shapely.geometry import MultiPoint, Point, Polygon

# Between two of the points at which a line is looked at, millimetres.
STEP = 0.01


def farthest(line, polygon, wall, wants_inside):
    points = [line.interpolate(step * STEP) for step in range(int(line.length / STEP))]
    points += [Point(corner) for corner in line.coords]
    depths = [at.distance(wall) for at in points if polygon.contains(at) == wants_inside]
    return max(depths, default=0)


def apart(a, b):
    """How far two convex outlines have to be moved apart: from the origin to the edge of their Minkowski difference."""
    corners = [(p[0] - q[0], p[1] - q[1]) for p in a.exterior.coords for q in b.exterior.coords]
    return Point(0, 0).distance(MultiPoint(corners).convex_hull.exterior)


def answer(case):
    a, b = Polygon(case["a"]), Polygon(case["b"])
    told = {
        "simple": bool(a.is_valid and b.is_valid),
        "within": bool(b.contains(a)),
        "overlap": bool(a.intersection(b).area > 0),
        "lines": a.exterior.distance(b.exterior),
        "distance": a.distance(b),
    }
    if case.get("deep") and not told["within"]:
        told["out"] = farthest(a.exterior, b, b.exterior, False)
        told["wood"] = farthest(b.exterior, a, a.exterior, True)
    if case.get("convex") and told["overlap"]:
        told["apart"] = apart(a, b)
    return told


json.dump([answer(case) for case in json.load(sys.stdin)], sys.stdout)
