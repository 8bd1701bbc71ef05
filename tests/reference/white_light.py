#!/usr/bin/env python3
# Peak of a star in white light behind a plane plate of glass, with and without the colour error of the eye that looks:
# the source of white_light.hpp. It knows nothing of the program under test.
#
#   python3 tests/reference/white_light.py          prints the table
#   python3 tests/reference/white_light.py --check  compares it with white_light.hpp, exit status 1 if it differs
#
# A cone whose rim has sin U = 1 / (2 N) meets a plate of thickness t square to its axis. Taken apart into plane waves, the
# one at the sine s is retarded by the plate by t (sqrt(n^2 - s^2) - sqrt(1 - s^2)), and a focus z farther on by
# z sqrt(1 - s^2): exact. An eye behind an exit pupil of width p sees that wave at the height s N p of its pupil, and its
# own error of R dioptres there adds R h^2 / 2 (h in metres): R(l) = 1.68524 - 633.46 / (l - 214.102), l in nm
# (L. N. Thibos, M. Ye, X. Zhang, A. Bradley, Applied Optics 31, 3594, 1992).
# The peak is the mean over V(l) of |mean over the pupil of exp(2 pi i W / l)|^2, at the best focus z; the pupil is even
# in s^2 (the sine condition). Indices by Sellmeier's formula with the constants that assets/glasses.toml names.
import cmath
import math
import sys
from pathlib import Path

# CIE 15:2004, Colorimetry: V(lambda) of 1924 from 390 nm on, every 5 nm; read in two transcriptions that agree.
V = """.000120 .000217 .000396 .000640 .001210 .002180 .004000 .007300 .011600 .016840 .023000 .029800 .038000 .048000
.060000 .073900 .090980 .112600 .139020 .169300 .208020 .258600 .323000 .407300 .503000 .608200 .710000 .793200 .862000
.914850 .954000 .980300 .994950 1.00000 .995000 .978600 .952000 .915400 .870000 .816300 .757000 .694900 .631000 .566800
.503000 .441200 .381000 .321000 .265000 .217000 .175000 .138200 .107000 .081600 .061000 .044580 .032000 .023200 .017000
.011920 .008210 .005723 .004102 .002929 .002091 .001484 .001047 .000740 .000520 .000361 .000249"""
LIGHT = [(390 + 5 * i, float(v)) for i, v in enumerate(V.split())]

GLASSES = {  # B1 B2 B3 C1 C2 C3, micrometres
    "N-BK7": (1.03961212, 0.231792344, 1.01046945, 0.00600069867, 0.0200179144, 103.560653),
    "N-BAK4": (1.28834642, 0.132817724, 0.945395373, 0.00779980626, 0.0315631177, 105.965875),
    "F2": (1.34533359, 0.209073176, 0.937357162, 0.00997743871, 0.0470450767, 111.886764),
    "N-SF11": (1.73759695, 0.313747346, 1.89878101, 0.013188707, 0.0623068142, 155.23629),
    "N-SF5": (1.52481889, 0.187085527, 1.42729015, 0.011254756, 0.0588995392, 129.141675),
    "N-BAF10": (1.5851495, 0.143559385, 1.08521269, 0.00926681282, 0.0424489805, 105.613573),
    "fused silica": (0.6961663, 0.4079426, 0.8974794, 0.0684043**2, 0.1162414**2, 9.896161**2),
}
# Glass, thickness, f-number, exit pupil (0: before any eye looks), mm.
CASES = (
    [("N-BAK4", 112, f, 0) for f in (5, 7, 10)]
    + [("N-BAK4", 112, 7, p) for p in (0.5, 1, 1.5, 2, 2.5, 3, 3.6, 5)]
    + [("N-BAK4", 0, 7, p) for p in (0.5, 1, 1.5, 2, 2.5, 3, 3.6, 5)]
    + [("N-BAK4", 150, 4, 2), ("N-BAK4", 250, 5, 1.5), ("N-BAK4", 112, 10, 7)]
    + [(g, 100, 6, p) for g in ("N-BK7", "N-BAF10", "fused silica") for p in (0, 3)]
    + [(g, 40, 6, p) for g in ("F2", "N-SF11", "N-SF5") for p in (0, 3)]
)
RINGS = 48


def index(glass, nm):
    b1, b2, b3, c1, c2, c3 = GLASSES[glass]
    square = (nm / 1000) ** 2
    return math.sqrt(1 + b1 * square / (square - c1) + b2 * square / (square - c2) + b3 * square / (square - c3))


def eye_dioptres(nm):
    return 1.68524 - 633.46 / (nm - 214.102)


def peak(t, f_number, waves, z):
    """Over V; `waves` by wavelength: (nm, V, paths in mm of the rings)."""
    sines = [(i + 0.5) / RINGS / (4 * f_number * f_number) for i in range(RINGS)]  # squared
    bent = [math.sqrt(1 - s) for s in sines]
    total = weights = 0
    for nm, weight, paths in waves:
        turns = 2j * math.pi / (nm * 1e-6)
        amplitude = sum(cmath.exp(turns * (path + z * c)) for path, c in zip(paths, bent)) / RINGS
        total += weight * abs(amplitude) ** 2
        weights += weight
    return total / weights


def paths_of(glass, t, f_number, pupil):
    waves = []
    for nm, weight in LIGHT:
        n = index(glass, nm)
        paths = []
        for i in range(RINGS):
            s2 = (i + 0.5) / RINGS / (4 * f_number * f_number)
            height = math.sqrt(s2) * f_number * pupil / 1000  # metres
            eye = eye_dioptres(nm) * height * height / 2 * 1000
            paths.append(t * (math.sqrt(n * n - s2) - math.sqrt(1 - s2)) + eye - t * (n - 1))
        waves.append((nm, weight, paths))
    return waves


def best_peak(glass, t, f_number, pupil):
    waves = paths_of(glass, t, f_number, pupil)
    depth = 2 * 555e-6 * f_number * f_number
    # Where the term in s^2 falls out at 555 nm, and half of the plate's spherical aberration behind that.
    n = index(glass, 555)
    start = t * (1 - 1 / n) + eye_dioptres(555) * (f_number * pupil) ** 2 / 1000
    start += t * (n * n - 1) / (16 * n**3 * f_number * f_number)
    best = max((peak(t, f_number, waves[::3], start + depth * k / 2), start + depth * k / 2) for k in range(-16, 17))
    best = (peak(t, f_number, waves, best[1]), best[1])
    step = depth / 4
    while step > depth / 100:
        near = max((peak(t, f_number, waves, best[1] + d), best[1] + d) for d in (-step, step))
        if near[0] > best[0]:
            best = near
        else:
            step /= 2
    return best[0]


def table():
    rows = []
    for glass, t, f_number, pupil in CASES:
        value = best_peak(glass, t, f_number, pupil)
        rows.append(f'    WhitePeak{{"{glass}", {t}, {f_number}, {pupil}, {value:.4f}}},')
    return "\n".join(rows)


if __name__ == "__main__":
    made = table()
    if "--check" not in sys.argv:
        print(made)
    elif made not in Path(__file__).with_suffix(".hpp").read_text():
        sys.exit("white_light.hpp differs from:\n" + made)
