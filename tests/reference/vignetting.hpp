// Circles over circles: how much of a round cone of light passes a round hole, and what follows for the field of a
// telescope with one narrow stop.
//
// Closed form: the area of overlap of two circles (E. W. Weisstein, "Circle-Circle Intersection", MathWorld, Eq. 14),
// over the area of the cone. Numbers worked out outside this program and checked against a count of grid cells.
#pragma once

#include <array>

namespace reference {

/// Share of a cone of diameter `cone`, `offset` beside the middle of a hole of diameter `hole`, that passes; to 1e-6.
struct CircleOverlap {
    double hole;
    double cone;
    double offset;
    double share;
};
inline constexpr std::array circle_overlaps{
    CircleOverlap{28, 14, 7, 1.000000},  CircleOverlap{28, 14, 10, 0.805041},
    CircleOverlap{28, 14, 14, 0.446610}, CircleOverlap{28, 14, 20, 0.026173},
    CircleOverlap{28, 14, 21, 0.000000}, CircleOverlap{20, 20, 5, 0.685038},
    CircleOverlap{20, 20, 10, 0.391002}, CircleOverlap{27, 20, 8, 0.763162},
};

/// A stop of diameter `stop`, `before_focus` mm ahead of the focus of an objective of aperture D and focal length F.
/// Similar triangles: the field is fully lit over (aF - zD) / (F - z), its chief ray meets the stop's rim at
/// aF / (F - z), it is dark beyond (aF + zD) / (F - z); field diameters in mm, to 1e-5.
struct FieldBehindStop {
    double aperture;
    double focal_length;
    double stop;
    double before_focus;
    double fully_lit;
    double chief_on_rim;
    double dark;
};
inline constexpr std::array fields_behind_stops{
    FieldBehindStop{100, 700, 28, 100, 16.00000, 32.66667, 49.33333},
    FieldBehindStop{100, 700, 28, 150, 8.36364, 35.63636, 62.90909},
    FieldBehindStop{80, 480, 22, 110, 4.75676, 28.54054, 52.32432},
    FieldBehindStop{200, 1000, 45, 120, 23.86364, 51.13636, 78.40909},
    FieldBehindStop{200, 2000, 35, 150, 21.62162, 37.83784, 54.05405},
};

/// The first of these telescopes: illumination at a radius of its field, by the closed form, to 1e-6.
struct FieldIllumination {
    double radius;
    double share;
};
inline constexpr std::array field_illuminations{
    FieldIllumination{8, 1.000000},
    FieldIllumination{10, 0.910614},
    FieldIllumination{12, 0.772774},
    FieldIllumination{13.5, 0.659946},
};

/// The objective (D = 100, F = 700) seen through the lens of the pair (2.6x, 65 mm) at its design distance: how far
/// the pupil's image lies before the lens, its diameter, its distance from the focus, and the f-number; to 1e-4.
inline constexpr double pupil_before_lens = 60.00774;
inline constexpr double pupil_diameter = 9.10070;
inline constexpr double pupil_to_focus = 165.63274;
inline constexpr double pupil_f_number = 18.2;

}  // namespace reference
