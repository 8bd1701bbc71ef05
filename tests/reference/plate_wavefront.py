#!/usr/bin/env python3
# Optical path through a plane plate in a converging cone, by Snell's law with 40 digits: the source of
# plate_wavefront.hpp. It knows nothing of the program under test.
#
#   python3 tests/reference/plate_wavefront.py          prints the table
#   python3 tests/reference/plate_wavefront.py --check  compares it with plate_wavefront.hpp, exit status 1 if it differs
#
# A cone from a distant sphere about its own focus, slope sin U = 1 / (2 N) at the rim, meets a plate of thickness t and
# index n square to its axis. Over an even disc in the sine (the sine condition) the program's quantities are:
#   W(s)    path of the ray at the sine s to the plane through the paraxial focus square to the ray, less the axial one
#   rms     root-mean-square of W about its best piston and defocus (Gauss-Legendre in s^2)
#   strehl  largest |mean of exp(2 pi i (W + defocus) / wavelength)|^2 over defocus along the axis
# The ray is followed face by face: refraction, lengths in glass and air, the foot of the perpendicular from the focus.
import sys
from pathlib import Path

from mpmath import cos, exp, lu_solve, matrix, mp, mpc, mpf, pi, sqrt

mp.dps = 40
WAVELENGTH = mpf("546.0740e-6")  # mm
CASES = [(t, n, f) for t in ("35", "100", "145") for n in ("1.5168", "1.5688") for f in ("5", "6", "7", "10")]


def legendre_and_slope(count, x):
    before, now = mpf(1), x
    for k in range(2, count + 1):
        before, now = now, ((2 * k - 1) * x * now - (k - 1) * before) / k
    return now, count * (x * now - before) / (x * x - 1)


def gauss_nodes(count):
    """Nodes and weights on 0..1, the weights adding up to 1."""
    nodes = []
    for i in range(count):
        x = cos(pi * (i + mpf("0.75")) / (count + mpf("0.5")))
        for _ in range(8):  # Newton's steps double the digits from a start good to three
            value, slope = legendre_and_slope(count, x)
            x -= value / slope
        slope = legendre_and_slope(count, x)[1]
        nodes.append(((x + 1) / 2, 1 / ((1 - x * x) * slope * slope)))
    return nodes


def wavefront(t, n, sine):
    """Path of one ray, in mm, against the axial ray; and the change per mm of focus shift."""
    focus = mpf(400)  # of the cone without the plate, from the pupil; the plate's front stands at 100
    front = mpf(100)
    paraxial = focus + t * (1 - 1 / n)
    cosine = sqrt(1 - sine * sine)
    tangent = sine / cosine
    sine_in = sine / n
    cosine_in = sqrt(1 - sine_in * sine_in)
    # From a sphere of radius 400 about the cone's focus: all rays start there with equal path.
    start_z = focus - 400 * cosine
    start_y = 400 * sine
    to_front = (front - start_z) / cosine
    y = start_y - (front - start_z) * tangent
    y -= t * sine_in / cosine_in
    back = front + t
    path = to_front + n * t / cosine_in
    # Foot of the perpendicular from (0, paraxial) on the ray, which runs along (-sine, cosine).
    path += (0 - y) * (-sine) + (paraxial - back) * cosine
    axial = front + n * t + (paraxial - back)
    return path - axial, cosine - 1


def measures(t, n, f):
    t, n, rim = mpf(t), mpf(n), 1 / (2 * mpf(f))
    nodes = gauss_nodes(16)
    rays = [(*wavefront(t, n, rim * sqrt(x)), w) for x, w in nodes]
    # Least squares for piston and defocus.
    a, b = matrix(2, 2), matrix(2, 1)
    for value, shift, weight in rays:
        for i, p in enumerate((1, shift)):
            b[i] += weight * p * value
            for j, q in enumerate((1, shift)):
                a[i, j] += weight * p * q
    piston, slope = lu_solve(a, b)
    rms = sqrt(sum(w * (v - piston - slope * s) ** 2 for v, s, w in rays)) / WAVELENGTH

    def peak(defocus):
        total = sum((w * exp(mpc(0, 2 * pi * (v - piston - defocus * s) / WAVELENGTH)) for v, s, w in rays), mpc(0))
        return abs(total) ** 2

    low, high = slope - mpf("0.02"), slope + mpf("0.02")
    for _ in range(36):
        third = (high - low) / 3
        if peak(low + third) < peak(high - third):
            low += third
        else:
            high -= third
    rim_value = wavefront(t, n, rim)[0] / WAVELENGTH
    return rim_value, rms, peak((low + high) / 2)


def rows():
    for t, n, f in CASES:
        rim, rms, peak = measures(t, n, f)
        yield f"    PlateWavefront{{{t}, {n}, {f}, {mp.nstr(rim, 9)}, {mp.nstr(rms, 9)}, {mp.nstr(peak, 9)}}},"


def main():
    table = list(rows())
    if "--check" not in sys.argv:
        print("\n".join(table))
        return 0
    header = Path(__file__).with_name("plate_wavefront.hpp").read_text(encoding="utf-8")
    missing = [row for row in table if row.strip() not in header]
    for row in missing:
        print("not in plate_wavefront.hpp:", row.strip())
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main())
