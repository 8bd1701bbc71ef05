// Glass path of prisms as a multiple of the width A of their entry face: the tunnel diagram's length.
#pragma once

#include <array>

namespace reference {

/// P. R. Yoder, Mounting Optics in Optical Instruments, 2nd ed., ch. 6 (the number from memory); W. J. Smith, Modern
/// Optical Engineering, 4th ed., Fig. 7.16 unfolds it to a block as long as its face is wide.
inline constexpr double right_angle_path = 1.0;

/// By geometry: straight through, or once turned at the middle.
inline constexpr double cube_path = 1.0;

/// Smith, sec. 7.14 describes the prism; (A + h) / A for an offset h by a two-dimensional trace outside this program.
struct RhomboidPath {
    double offset;
    double path;
};
inline constexpr std::array rhomboid_paths{
    RhomboidPath{1.0, 2.0},
    RhomboidPath{1.3, 2.3},
    RhomboidPath{2.0, 3.0},
};

/// Roof prisms that pass a full round beam, by a three-dimensional trace outside this program; handbooks print
/// 1.7071 (which clips 0.41 % of the beam) and 3.045 (P. R. Yoder, as above, from memory).
inline constexpr double roof_90_path = 1.7321;
inline constexpr double roof_45_path = 3.040;
inline constexpr double roof_path_digits = 5e-5;
/// Of axial light on each roof face, by vector algebra outside this program.
inline constexpr double roof_90_incidence_deg = 60.0;
inline constexpr double roof_45_incidence_deg = 49.2105;

}  // namespace reference
