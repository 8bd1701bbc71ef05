// Prisms with a roof: two faces that meet in an edge at a right angle take the place of one reflecting face
// and exchange left and right, so that with the folds the image comes out upright and the right way round.
// Their faces are those of a real block of glass, cut by planes; frames and widths as in prisms.hpp.
//
// The width A is that of the largest round beam that passes without being clipped.
#pragma once

#include "parts/prisms.hpp"

namespace beamfork {

/// Light turned by 90 degrees at a roof whose edge lies at 45 degrees; axial light meets each roof face at
/// 60 degrees. Glass path sqrt(3) A, so that no ray of the round beam misses the roof (derived: the roof
/// plane z = a + y - sqrt(2)|x| must lie behind the entry face over the whole circle).
Prism roof_prism_90(double width, const PrismGlass& glass, const std::string& name);

/// Light turned by 45 degrees: a total reflection at the exit face, the roof, a total reflection at the entry
/// face. Axial incidence 45, 49.21 (twice) and 45 degrees; glass path 3.0400 A (derived likewise; handbooks
/// print 3.045, from memory). Of the coating only the roof has any: light passes the other two faces.
Prism roof_prism_45(double width, const PrismGlass& glass, const std::string& name);

}  // namespace beamfork
