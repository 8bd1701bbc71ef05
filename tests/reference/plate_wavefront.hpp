// The wavefront behind a plane plate in a converging cone, followed by Snell's law with 40 digits in another language:
// printed by plate_wavefront.py beside this file (mpmath 1.3), which knows nothing of this program.
#pragma once

#include <array>

namespace reference {

/// Plate of that thickness (mm) and index in a cone whose rim has sin U = 1 / (2 N), in waves of 546.0740 nm: path
/// error of the rim at the paraxial focus, root-mean-square error against the best-fit sphere, and the highest peak
/// along the axis over a perfect one's. Printed to nine digits.
struct PlateWavefront {
    double thickness;
    double index;
    double f_number;
    double rim_waves;
    double rms_waves;
    double strehl;
};
// clang-format off
inline constexpr std::array plate_wavefronts{
    PlateWavefront{35, 1.5168, 5, 0.300773132, 0.0224426941, 0.980284423},
    PlateWavefront{35, 1.5168, 6, 0.14472931, 0.0107956327, 0.995408024},
    PlateWavefront{35, 1.5168, 7, 0.0780176644, 0.00581831918, 0.998664309},
    PlateWavefront{35, 1.5168, 10, 0.0186970174, 0.00139397209, 0.99992329},
    PlateWavefront{35, 1.5688, 5, 0.305336077, 0.0227815478, 0.979689837},
    PlateWavefront{35, 1.5688, 6, 0.146931367, 0.0109593481, 0.995267979},
    PlateWavefront{35, 1.5688, 7, 0.0792067818, 0.00590678614, 0.998623406},
    PlateWavefront{35, 1.5688, 10, 0.0189826929, 0.00141524578, 0.999920931},
    PlateWavefront{100, 1.5168, 5, 0.859351806, 0.0641219832, 0.848568484},
    PlateWavefront{100, 1.5168, 6, 0.413512314, 0.0308446648, 0.963040012},
    PlateWavefront{100, 1.5168, 7, 0.222907613, 0.0166237691, 0.989141037},
    PlateWavefront{100, 1.5168, 10, 0.0534200498, 0.0039827774, 0.999373941},
    PlateWavefront{100, 1.5688, 5, 0.872388791, 0.0650901365, 0.844289808},
    PlateWavefront{100, 1.5688, 6, 0.419803904, 0.0313124231, 0.961929235},
    PlateWavefront{100, 1.5688, 7, 0.226305091, 0.0168765318, 0.988809911},
    PlateWavefront{100, 1.5688, 10, 0.0542362653, 0.00404355938, 0.999354692},
    PlateWavefront{145, 1.5168, 5, 1.24606012, 0.0929768756, 0.704982149},
    PlateWavefront{145, 1.5168, 6, 0.599592856, 0.0447247639, 0.923656825},
    PlateWavefront{145, 1.5168, 7, 0.323216038, 0.0241044652, 0.977286377},
    PlateWavefront{145, 1.5168, 10, 0.0774590723, 0.00577502723, 0.9986841},
    PlateWavefront{145, 1.5688, 5, 1.26496375, 0.0943806979, 0.69734401},
    PlateWavefront{145, 1.5688, 6, 0.608715661, 0.0454030134, 0.921404971},
    PlateWavefront{145, 1.5688, 7, 0.328142382, 0.0244709712, 0.976597456},
    PlateWavefront{145, 1.5688, 10, 0.0786425848, 0.00586316111, 0.998643653},
};
// clang-format on

}  // namespace reference
