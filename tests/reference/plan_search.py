#!/usr/bin/python3
"""Every train of random drawers by brute force, against `beamfork plan DRAWER --every --json`.

Knows reduced lengths, thin lenses and joints alone, and nothing of the program: the drawers are made here, and what a train
may be is what src/plan/chains.hpp says in words. Focus comes from the 2 x 2 matrices of paraxial optics (thin lenses and
reduced lengths; E. Hecht, Optics, 5th ed., sec. 6.2.1), rows of adapters from trying every order of every spacer.

    plan_search.py --check PROGRAM     exit status 1 and a line for each train that differs
"""
import functools
import itertools
import json
import random
import subprocess
import sys
import tempfile

BARRELS = {"1.25 in barrel": "1.25 in filter male", "2 in barrel": "M48x0.75 male"}
MATES = {}
for one, other in [("1.25 in barrel", "1.25 in holder"), ("2 in barrel", "2 in holder"),
                   ("M42x0.75 male", "M42x0.75 female"), ("M48x0.75 male", "M48x0.75 female"),
                   ("1.25 in filter male", "1.25 in filter female")]:
    MATES[one], MATES[other] = other, one
ENDS = [("2 in barrel", "2 in holder"), ("1.25 in barrel", "1.25 in holder"), ("M42x0.75 female", "M42x0.75 male"),
        ("2 in barrel", "1.25 in holder"), ("2 in barrel", "M42x0.75 male"), ("1.25 in barrel", "M42x0.75 male"),
        ("M42x0.75 female", "1.25 in holder"), ("M42x0.75 female", "M48x0.75 male"), ("M48x0.75 female", "M42x0.75 male")]
VERTEX = 0.0156  # metres from a spectacle lens to the eye's principal point


def fits(rear, front):
    return rear is None or front is None or MATES[rear] == front


def screwed_in(rear, front):
    return front in BARRELS and BARRELS[front] == rear


def half(dice, low, high):
    """A length in halves of a millimetre, which binary numbers hold exactly."""
    return dice.randint(2 * low, 2 * high) / 2


def ends(dice, part, choice=ENDS):
    if dice.random() < 0.1:
        return part  # both ends unstated
    part["front_fitting"], part["rear_fitting"] = dice.choice(choice)
    return part


def random_drawer(seed):
    dice = random.Random(seed)
    parts = []

    def add(kind, name, **keys):
        parts.append({"kind": kind, "name": name, **keys})
        return parts[-1]

    add("refractor", "R", aperture_mm=100, focal_length_mm=dice.randint(500, 900), back_focus_mm=half(dice, 120, 220))
    add("newtonian", "N", aperture_mm=200, focal_length_mm=dice.randint(900, 1200), back_focus_mm=half(dice, 30, 90))
    for name, tube in [("RF", "R"), ("NF", "N"), ("NL", "N")]:
        part = add("focuser", name, sits_on=tube, travel_mm=half(dice, 30, 90),
                   rear_fitting=dice.choice(["2 in holder", "1.25 in holder", "M48x0.75 male"]))
        if name == "NL":
            part["lower_by_mm"] = half(dice, 10, 30)
    for i in range(3):
        ends(dice, add("mirror_diagonal", f"M{i}", entry_leg_mm=half(dice, 25, 55), exit_leg_mm=half(dice, 25, 55)),
             [e for e in ENDS if e[0] in BARRELS or "M42" in e[0]])
    for i in range(8):
        part = add("spacer", f"S{i}", length_mm=half(dice, 1, 40))
        part["front_fitting"], part["rear_fitting"] = dice.choice(ENDS)
    for i in range(3):
        lens = add("shifter", f"L{i}", given_by="focal length", focal_length_mm=-half(dice, 60, 250), lens_offset_mm=2,
                   length_mm=half(dice, 3, 8))
        lens["front_fitting"], lens["rear_fitting"] = dice.choice(
            [("M42x0.75 female", "M42x0.75 male"), ("1.25 in filter female", "1.25 in filter male"),
             ("M48x0.75 female", "M48x0.75 male"), ("1.25 in barrel", "1.25 in filter male")])
    ends(dice, add("coma_corrector", "C", stated_factor=1.15, spacing_mm=55, lens_offset_mm=1, length_mm=half(dice, 3, 9)))
    for i in range(2):
        ends(dice, add("splitter_head", f"H{i}", stated_light_path_mm=half(dice, 105, 125), seat_travel_mm=3),
             [("M42x0.75 female", "1.25 in holder"), ("1.25 in barrel", "1.25 in holder"), ("2 in barrel", "2 in holder")])
    for i, focal in enumerate(dice.sample([8, 10, 12.5, 16, 20, 25, 32], 3)):
        pair = add("eyepiece_pair", f"E{i}", focal_length_mm=focal, field_stop_mm=10, field_stop_depth_mm=half(dice, -5, 8))
        if dice.random() < 0.9:
            pair["front_fitting"] = dice.choice(["1.25 in barrel", "1.25 in barrel", "2 in barrel"])
    observers = [{"name": "O0"}, {"name": "O1", "left_dioptres": dice.randint(-16, 12) / 4,
                                  "right_dioptres": dice.randint(-16, 12) / 4}]
    targets = [{"name": "sky"}, {"name": "near", "distance_m": dice.randint(20, 90)}]
    return parts, observers, targets


def written(parts, observers, targets):
    def value(x):
        return json.dumps(x) if isinstance(x, str) else repr(x)
    lines = ["beamfork_drawer = 1"]
    for heading, entries in [("part", parts), ("observer", observers), ("target", targets)]:
        for entry in entries:
            lines += [f"[[{heading}]]"] + [f"{key} = {value(x)}" for key, x in entry.items()]
    return "\n".join(lines) + "\n"


def length_of(part):
    if part["kind"] == "mirror_diagonal":
        return part["entry_leg_mm"] + part["exit_leg_mm"]
    return part["length_mm"]


def focal_length_of(part):
    if part["kind"] == "coma_corrector":  # a thin lens that has the stated factor at the stated spacing
        to_image = part["length_mm"] - part["lens_offset_mm"] + part["spacing_mm"]
        return to_image / (1 - part["stated_factor"])
    return part["focal_length_mm"]


@functools.cache
def shortest_row(rear, front, spacers):
    """Of all rows of up to three of the spacers (each: name, front, rear, length) that join the two ends."""
    if fits(rear, front):
        return []
    found = []
    for count in (1, 2, 3):
        for row in itertools.permutations(range(len(spacers)), count):
            rears = [rear] + [spacers[i][2] for i in row]
            fronts = [spacers[i][1] for i in row] + [front]
            if all(MATES[a] == b for a, b in zip(rears, fronts)):
                found.append((sum(spacers[i][3] for i in row), count, row))
    return [spacers[i][0] for i in min(found)[2]] if found else None


def joined(focuser, working, head, spacers):
    """The chain with its adapters, or None."""
    chain, waiting, before = [], [], focuser["rear_fitting"]
    free = [s for s in spacers if s not in working]
    for i, part in enumerate(working + [head]):
        behind = (working + [head])[i + 1] if i < len(working) else None
        if behind and screwed_in(part.get("rear_fitting"), behind.get("front_fitting")):
            waiting.append(part)
            continue
        names = shortest_row(before, part.get("front_fitting"),
                             tuple((s["name"], s["front_fitting"], s["rear_fitting"], s["length_mm"]) for s in free))
        if names is None:
            return None
        row = [next(s for s in free if s["name"] == name) for name in names]
        free = [s for s in free if s not in row]
        chain += row + waiting + ([part] if behind else [])
        waiting, before = [], part.get("rear_fitting")
    return chain


def chains(parts, focuser, head, is_newtonian):
    def of(kind):
        return [p for p in parts if p["kind"] == kind]
    spacers = of("spacer")
    found = {}
    correctors = [[]] + ([[c] for c in of("coma_corrector")] if is_newtonian else [])
    groups = [[]] + [[s] for s in spacers] + [[l] for l in of("shifter")] + [[l, s] for l in of("shifter") for s in spacers]
    for corrector in correctors:
        for diagonal in [[]] + [[d] for d in of("mirror_diagonal")]:
            for group in groups:
                for working in (corrector + diagonal + group, corrector + group + diagonal):
                    chain = joined(focuser, working, head, spacers)
                    if chain is not None:
                        found[tuple(p["name"] for p in chain)] = chain
    return found


def times(a, b):
    return [[sum(a[i][k] * b[k][j] for k in range(2)) for j in range(2)] for i in range(2)]


def matrix_of(chain, last):
    """From the drawtube's rear face through the chain and `last` mm more; acts on (height, slope)."""
    system = [[1, 0], [0, 1]]

    def go(length):
        nonlocal system
        system = times([[1, length], [0, 1]], system)
    for part in chain:
        if "lens_offset_mm" in part:
            go(part["lens_offset_mm"])
            system = times([[1, 0], [-1 / focal_length_of(part), 1]], system)
            go(length_of(part) - part["lens_offset_mm"])
        else:
            go(length_of(part))
    go(last)
    return system


def wanted_image(pair, observer):
    """Behind the head's exit, for both eyes; and what the left seat moves out beside that."""
    def shift(dioptres):  # a short-sighted eye wants the image behind the field stop; f^2 / 1000 per dioptre at the eye
        return -dioptres / (1 - VERTEX * dioptres) * pair["focal_length_mm"] ** 2 / 1000
    left, right = shift(observer.get("left_dioptres", 0)), shift(observer.get("right_dioptres", 0))
    return (left + right) / 2 - pair["field_stop_depth_mm"], (right - left) / 2


def back_focus(tube, focuser, target):
    focus = tube["back_focus_mm"] + focuser.get("lower_by_mm", 0)
    if "distance_m" not in target:
        return focus
    f, distance = tube["focal_length_mm"], 1000 * target["distance_m"]
    if tube["kind"] == "newtonian":
        distance += tube["aperture_mm"] ** 2 / (16 * f)  # from the rim to the vertex of a paraboloid
    return focus + f * f / (distance - f)


def judged(tube, focuser, chain, head, pair, observer, target):
    image, seat = wanted_image(pair, observer)
    system = matrix_of(chain, head["stated_light_path_mm"] + image)
    needed = system[0][1] / system[0][0]  # the image of what converges there falls where it is wanted
    focus = back_focus(tube, focuser, target)
    margin_in = focus - needed
    margin_out = focuser["travel_mm"] - margin_in
    (a, b), (c, d) = system
    factor = (-1 / needed) / (c - d / needed)
    reaches = min(margin_in, margin_out) >= -1e-9
    if not reaches:  # the seats follow where the drawtube cannot
        stands = focus - min(max(margin_in, 0), focuser["travel_mm"])
        (a, b), (c, d) = matrix_of(chain, head["stated_light_path_mm"])
        height, slope = a - b / stands, c - d / stands
        missed = -height / slope - image
        reaches = abs(missed) + abs(seat) <= head["seat_travel_mm"] + 1e-9
    return reaches, margin_in, margin_out, factor


def every_train(parts, observers, targets):
    named = {p["name"]: p for p in parts}
    found = {}
    for focuser in (p for p in parts if p["kind"] == "focuser"):
        tube = named[focuser["sits_on"]]
        for head in (p for p in parts if p["kind"] == "splitter_head"):
            for names, chain in chains(parts, focuser, head, tube["kind"] == "newtonian").items():
                for pair in (p for p in parts if p["kind"] == "eyepiece_pair"):
                    if fits(head.get("rear_fitting"), pair.get("front_fitting")):
                        train = (tube["name"], focuser["name"], *names, head["name"], pair["name"])
                        found[train] = {(o["name"], t["name"]): judged(tube, focuser, chain, head, pair, o, t)
                                        for o in observers for t in targets}
    return found


def told_by(program, drawer):
    with tempfile.NamedTemporaryFile("w", suffix=".drawer.toml") as file:
        file.write(drawer)
        file.flush()
        run = subprocess.run([program, "plan", file.name, "--every", "--json"], capture_output=True, text=True)
    if run.returncode != 0:
        raise SystemExit(f"{program} says: {run.stderr}")
    return {tuple(train["parts"]): {(u["observer"], u["target"]): (u["reaches"], u["margin_in_mm"], u["margin_out_mm"],
                                                                  u["shifter_factor"]) for u in train["uses"]}
            for train in json.loads(run.stdout)["every_train"]}


def differences(expected, told):
    for train in sorted(expected.keys() - told.keys()):
        yield f"{' + '.join(train)}: can be joined and is not told"
    for train in sorted(told.keys() - expected.keys()):
        yield f"{' + '.join(train)}: is told and cannot be joined"
    for train in sorted(expected.keys() & told.keys()):
        for use, right in expected[train].items():
            found = told[train].get(use)
            # Rounding, which a long row of lenses near a pole of the image's place multiplies.
            size = 1 + max(abs(right[1]), abs(right[3]))
            if found is None or found[0] != right[0] or any(abs(a - b) > 1e-7 * size for a, b in zip(found[1:], right[1:])):
                yield f"{' + '.join(train)}, {use}: {found} and not {right}"


def main():
    if len(sys.argv) != 3 or sys.argv[1] != "--check":
        raise SystemExit(__doc__)
    wrong = 0
    for seed in (2, 3, 5):
        parts, observers, targets = random_drawer(seed)
        expected = every_train(parts, observers, targets)
        reaching = sum(any(use[0] for use in uses.values()) for uses in expected.values())
        if not 0 < reaching < len(expected):
            raise SystemExit(f"drawer {seed} tries nothing: {reaching} of {len(expected)} trains reach")
        for line in differences(expected, told_by(sys.argv[2], written(parts, observers, targets))):
            wrong += 1
            print(f"drawer {seed}: {line}")
        print(f"drawer {seed}: {len(expected)} trains, {reaching} of them reach for somebody")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
