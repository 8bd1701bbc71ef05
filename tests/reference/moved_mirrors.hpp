// A two-mirror telescope focused by moving its main mirror, traced with 40 digits in another language, and the
// third-order theory beside it: printed by moved_mirrors.py beside this file (mpmath 1.3), which knows nothing of this
// program and names its sources.
#pragma once

#include <array>

namespace reference {

enum class Kind { spheres, coma_free_secondary, paraboloid_hyperboloid, hyperboloids };

/// Lengths in mm. Waves of 546.0740 nm of the mirrors with their corrector, whose image is perfect on the axis (the
/// hyperboloids': in third order) at the stated back focus: path to the paraxial focus less that of the middle's ray.
struct MovedMirrors {
    double aperture;
    double focal_length;
    double primary_focal_length;
    double back_focus;
    double rear_face;
    Kind kind;
    double secondary_constant;
    double more_back_focus;
    double rim_waves;    ///< exact, at the rim
    double zone_waves;   ///< exact, at 0.7071 of it
    double third_order;  ///< at the rim, against that at the design
};
// clang-format off
inline constexpr std::array moved_mirrors{
    MovedMirrors{203, 2032, 406, 110, 110, Kind::spheres, 0.0, -40, -0.302985315, -0.0754349292, -0.300491163},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::spheres, 0.0, 81, 0.471265943, 0.117426591, 0.468124308},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::spheres, 0.0, 150, 0.766784548, 0.191139292, 0.762277544},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::coma_free_secondary, -0.78690574, -40, 0.293488633, 0.0739412506, 0.297984123},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::coma_free_secondary, -0.78690574, 81, -0.606438245, -0.152392571, -0.612559939},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::coma_free_secondary, -0.78690574, 150, -1.11150214, -0.278930689, -1.1196484},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::paraboloid_hyperboloid, -2.24815536, -40, 1.38143165, 0.348806249, 1.40932661},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::paraboloid_hyperboloid, -2.24815536, 81, -2.59905867, -0.652332463, -2.61934342},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::paraboloid_hyperboloid, -2.24815536, 150, -4.6131536, -1.15361353, -4.61430275},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::hyperboloids, -2.45781732, -40, 1.53842322, 0.388356164, 1.56878345},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::hyperboloids, -2.45781732, 81, -2.88831149, -0.724499168, -2.90727928},
    MovedMirrors{203, 2032, 406, 110, 110, Kind::hyperboloids, -2.45781732, 150, -5.12504916, -1.28034504, -5.11572023},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::spheres, 0.0, -40, -0.11313623, -0.0282507469, -0.112869074},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::spheres, 0.0, 81, 0.178832298, 0.0446786228, 0.178594329},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::spheres, 0.0, 150, 0.292923656, 0.0732017261, 0.292685203},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::coma_free_secondary, -1.16653924, -40, 0.110298526, 0.0276477711, 0.110880041},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::coma_free_secondary, -1.16653924, 81, -0.235456752, -0.0589506414, -0.236138652},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::coma_free_secondary, -1.16653924, 150, -0.437374941, -0.109429989, -0.438043811},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::paraboloid_hyperboloid, -2.77777778, -40, 0.416157993, 0.104508074, 0.419925106},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::paraboloid_hyperboloid, -2.77777778, 81, -0.80601558, -0.201875669, -0.808973011},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::paraboloid_hyperboloid, -2.77777778, 150, -1.44698394, -0.36180219, -1.44733583},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::hyperboloids, -3.19185645, -40, 0.49503165, 0.124294491, 0.49934784},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::hyperboloids, -3.19185645, 81, -0.95334093, -0.23869536, -0.956188018},
    MovedMirrors{150, 1800, 450, 100, 90, Kind::hyperboloids, -3.19185645, 150, -1.708619, -0.426937523, -1.70671784},
};
// clang-format on

}  // namespace reference
