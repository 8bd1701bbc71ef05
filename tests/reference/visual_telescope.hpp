// Field, eyepiece travel and near targets of a visual telescope. Lengths in mm, angles in degrees.
#pragma once

#include <array>

namespace reference {

/// True field 2 atan(stop / 2F); geometry; to 1e-5.
struct TrueField {
    double focal_length;
    double field_stop;
    double degrees;
};
inline constexpr std::array true_fields{
    TrueField{700, 27, 2.20971},
    TrueField{1000, 27, 1.54689},
    TrueField{2032, 27, 0.76130},
    TrueField{500, 21.2, 2.42898},
};

/// Eyepiece travel for one dioptre, f^2 / 1000: W. J. Smith, Modern Optical Engineering, 4th ed., p. 290; Photonics
/// Dictionary, "diopter movement".
struct DioptreTravel {
    double focal_length;
    double travel;
};
inline constexpr std::array dioptre_travels{
    DioptreTravel{10, 0.1000}, DioptreTravel{15, 0.2250}, DioptreTravel{20, 0.4000},
    DioptreTravel{24, 0.5760}, DioptreTravel{25, 0.6250}, DioptreTravel{32, 1.0240},
};

/// How much farther out a target at this distance focuses than the sky, F^2 / (u - F): Newton's conjugates, in any
/// text on optics; to 1e-5.
struct NearTarget {
    double focal_length;
    double distance;
    double shift;
};
inline constexpr std::array near_targets{
    NearTarget{500, 10'000, 26.31579},   NearTarget{700, 20'000, 25.38860},
    NearTarget{1000, 100'000, 10.10101}, NearTarget{2000, 100'000, 40.81633},
    NearTarget{700, 1'000'000, 0.49034},
};

}  // namespace reference
