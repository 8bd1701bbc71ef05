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

}  // namespace reference
