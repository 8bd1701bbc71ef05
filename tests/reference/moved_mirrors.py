#!/usr/bin/env python3
# A two-mirror telescope focused by moving its main mirror: an exact trace and the third-order theory, with 40 digits:
# the source of moved_mirrors.hpp. It knows nothing of the program under test.
#
#   python3 tests/reference/moved_mirrors.py          prints the table
#   python3 tests/reference/moved_mirrors.py --check  compares it with moved_mirrors.hpp, exit status 1 if it differs
#
# Exact: a corrector in front is known by what it must do at the design focus. Light sent backwards from that focus over
# both mirrors leaves the telescope at the height h with a slope and a path; the corrector turns it parallel to the axis
# and makes all paths alike. So with the main mirror moved, a star's light at the height h enters by that same slope and
# path: no shape of the corrector is needed. Every conic is met by Newton's steps on its own equation.
#
# Third order, path of the rim to the paraxial focus less the middle's (D. J. Schroeder, Astronomical Optics, 2nd ed.,
# ch. 5 and 6; from memory): of a mirror of radius R and conic constant K met at the height y at magnification m,
# y^4 / (4 R^3) [K + ((m + 1) / (m - 1))^2], of the main mirror -y^4 / (4 R^3) (K + 1) for a star, of the corrector what
# makes the sum zero at the design. Main mirror and corrector keep theirs when the main mirror moves.
# Coma-free pair of hyperboloids (ibid., ch. 6, two-mirror telescopes; from memory): beta is the way from the main
# mirror's vertex to the focus over its focal length, K1 = -1 - 2 (1 + beta) / (m^2 (m - beta)),
# K2 = -((m + 1) / (m - 1))^2 - 2 m (m + 1) / ((m - beta) (m - 1)^3).
# Coma-free secondary behind a corrector: K2 for which Abbe's sine condition h = F sin U holds at 0.7 of the aperture.
import sys
from pathlib import Path

from mpmath import findroot, mp, mpf, sqrt

mp.dps = 40
WAVELENGTH = mpf("546.0740e-6")  # mm
KINDS = ("spheres", "coma_free_secondary", "paraboloid_hyperboloid", "hyperboloids")
# aperture, focal length, main mirror alone, back focus, rear face; then how much more back focus
TELESCOPES = [(203, 2032, 406, 110, 110), (150, 1800, 450, 100, 90)]
MORE = [-40, 81, 150]


class Mirrors:
    def __init__(self, sizes, kind):
        self.aperture, self.F, self.f1, self.back_focus, self.rear = map(mpf, sizes)
        self.m = self.F / self.f1
        self.p = (self.f1 + self.rear + self.back_focus) / (self.m + 1)  # secondary to the main mirror's own focus
        self.f2 = self.p * self.m / (self.m - 1)
        self.d = self.f1 - self.p
        self.plate = -self.d - 20
        e2 = ((self.m + 1) / (self.m - 1)) ** 2
        beta = (self.rear + self.back_focus) / self.f1
        self.K1, self.K2, self.corrected = mpf(0), mpf(0), True
        if kind == "paraboloid_hyperboloid":
            self.K1, self.K2, self.corrected = mpf(-1), -e2, False
        elif kind == "hyperboloids":
            self.K1 = -1 - 2 * (1 + beta) / (self.m**2 * (self.m - beta))
            self.K2 = -e2 - 2 * self.m * (self.m + 1) / ((self.m - beta) * (self.m - 1) ** 3)
            self.corrected = False
        elif kind == "coma_free_secondary":
            zone = self.aperture / 2 * sqrt(mpf("0.5"))

            def off(K2):
                self.K2 = K2
                return self.back(zone / self.F)[0] - zone

            self.K2 = findroot(off, (mpf(-1), mpf(0)), solver="secant")

    def back(self, sine):
        """Height, slope (sine) and path at the corrector of light from the design focus."""
        ray = (mpf(0), self.rear + self.back_focus, sine, -sqrt(1 - sine * sine), mpf(0))
        ray = reflect(ray, -self.d, -1 / (2 * self.f2), self.K2)
        ray = reflect(ray, mpf(0), -1 / (2 * self.f1), self.K1)
        return at_plane(ray, self.plate)

    def entering(self, h):
        """A star's ray behind the corrector at the height h."""
        if not self.corrected:
            return h, self.plate, mpf(0), mpf(1), mpf(0)
        s = findroot(lambda x: self.back(x)[0] - h, (h / self.F, h / self.F * mpf("1.0001")), solver="secant")
        y, sy, path = self.back(s)
        middle = self.back(mpf(0))[2]
        return y, self.plate, -sy, sqrt(1 - sy * sy), middle - path

    def moved_for(self, more):
        image = self.d + self.rear + self.back_focus + more
        return image * self.f2 / (image + self.f2) - self.p

    def rim_path(self, more, share):
        moved = self.moved_for(more)
        focus = self.rear + self.back_focus + more

        def path(h):
            ray = reflect(self.entering(h), -moved, -1 / (2 * self.f1), self.K1)
            y, z, sy, sz, length = reflect(ray, -self.d, -1 / (2 * self.f2), self.K2)
            return length + (0 - y) * sy + (focus - z) * sz  # foot of the perpendicular from the focus

        return (path(share * self.aperture / 2) - path(mpf(0))) / WAVELENGTH

    def third_order(self, more):
        moved = self.moved_for(more)

        def of_secondary(object_distance):
            m = self.f2 / (self.f2 - object_distance)
            y = self.aperture / 2 * object_distance / self.f1
            return y**4 / (4 * (2 * self.f2) ** 3) * (self.K2 + ((m + 1) / (m - 1)) ** 2)

        return (of_secondary(self.p + moved) - of_secondary(self.p)) / WAVELENGTH


def reflect(ray, vertex, c, K):
    y, z, sy, sz, path = ray
    z -= vertex
    t = -z / sz
    for _ in range(60):
        Y, Z = y + t * sy, z + t * sz
        step = (c * (Y * Y + (1 + K) * Z * Z) - 2 * Z) / (2 * c * (Y * sy + (1 + K) * Z * sz) - 2 * sz)
        t -= step
        if abs(step) < mpf(10) ** -36:
            break
    Y, Z = y + t * sy, z + t * sz
    ny, nz = c * Y, c * (1 + K) * Z - 1
    twice = 2 * (sy * ny + sz * nz) / (ny * ny + nz * nz)
    return Y, Z + vertex, sy - twice * ny, sz - twice * nz, path + t


def at_plane(ray, plane):
    y, z, sy, sz, path = ray
    t = (plane - z) / sz
    return y + t * sy, sy, path + t


def rows():
    for sizes in TELESCOPES:
        for kind in KINDS:
            mirrors = Mirrors(sizes, kind)
            for more in MORE:
                numbers = [mp.nstr(mirrors.rim_path(more, share), 9) for share in (mpf(1), sqrt(mpf("0.5")))]
                third = mp.nstr(mirrors.third_order(more), 9)
                yield "    MovedMirrors{{{}, {}, {}, {}, {}, Kind::{}, {}, {}, {}, {}, {}}},".format(
                    *sizes, kind, mp.nstr(mirrors.K2, 9), more, *numbers, third)


def main():
    table = list(rows())
    if "--check" not in sys.argv:
        print("\n".join(table))
        return 0
    header = Path(__file__).with_name("moved_mirrors.hpp").read_text(encoding="utf-8")
    missing = [row for row in table if row.strip() not in header]
    for row in missing:
        print("not in moved_mirrors.hpp:", row.strip())
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main())
