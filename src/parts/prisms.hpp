// Prisms by their faces: each returns the surfaces light meets and the block of glass to look at, in a
// frame whose origin is the middle of the entry face and whose z is the light that enters. `width` is
// the side of the square entry face; folds go towards +y, turn the prism about z for other sides.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "parts/layout.hpp"

namespace beamfork {

enum class FaceCoating { bare, mirrored };

struct Prism {
    std::vector<Surface> surfaces;
    Pose prism_from_exit;             ///< on the exit face, z along the light that leaves
    std::function<GlassBody()> body;  ///< made when asked for: light alone needs none
};

struct PrismGlass {
    std::string glass;
    FaceCoating coating = FaceCoating::bare;
};

/// Light turned once by 90 degrees at the hypotenuse; glass path = width
/// (W. J. Smith, Modern Optical Engineering, 4th ed., Fig. 7.16).
Prism right_angle_prism(double width, const PrismGlass& glass, const std::string& name);

/// Light displaced by `offset` towards +y and parallel to itself; glass path = width + offset
/// (Smith, sec. 7.14).
Prism rhomboid_prism(double width, double offset, const PrismGlass& glass, const std::string& name);

/// A straight block, glass path = length.
Prism glass_block(double width, double length, const std::string& glass, const std::string& name);

/// The name of the surface that divides the light.
inline constexpr std::string_view cube_interface = "cube interface";
/// The beam-splitting cube on its transmitted side: straight through the 45 degree interface.
Prism cube_transmitting(double width, const std::string& glass);
/// The beam-splitting cube on its reflected side: turned towards +y at the interface.
Prism cube_reflecting(double width, const std::string& glass);

/// Moves the surfaces of a prism into an outer frame and adds them to `surfaces`.
void append(std::vector<Surface>& surfaces,
            std::vector<Surface> of_prism,
            const Pose& outer_from_prism);

}  // namespace beamfork
