// The plane-parallel plate, which is every prism unfolded, in a converging beam.
//
// Source: W. J. Smith, Modern Optical Engineering, 4th ed. (2008), sec. 7.8, pp. 132-135, Fig. 7.14 (formulas read
// there; numbers worked out and checked by a vector Snell trace outside this program). f-number: tan U = 1 / (2 N).
#pragma once

#include <array>

namespace reference {

/// Paraxial image shift t (1 - 1/n) and reduced length t / n, mm; printed to 1e-6.
struct PlateShift {
    double thickness;
    double index;
    double shift;
    double reduced;
};
inline constexpr std::array plate_shifts{
    PlateShift{35, 1.5168, 11.925105, 23.074895},  PlateShift{35, 1.5688, 12.689954, 22.310046},
    PlateShift{100, 1.5168, 34.071730, 65.928270}, PlateShift{100, 1.5688, 36.257012, 63.742988},
    PlateShift{145, 1.5168, 49.404008, 95.595992}, PlateShift{145, 1.5688, 52.572667, 92.427333},
};

/// Marginal ray of an f/N cone: exact shift t [1 - cosU / sqrt(n^2 - sin^2 U)] and longitudinal spherical aberration
/// (marginal minus paraxial), mm, to 1e-5; third-order form t u^2 (n^2 - 1) / (2 n^3) and transverse aberration at the
/// paraxial focus, mm, to 1e-6; path difference there against a distant sphere, waves of 546.0740 nm, to 1e-3.
struct ConePlate {
    double thickness;
    double index;
    double f_number;
    double shift;
    double spherical;
    double spherical_third_order;
    double transverse;
    double waves;
};
inline constexpr std::array cone_plates{
    ConePlate{35, 1.5168, 5, 11.990057, 0.064951, 0.065227, 0.006495, 0.294826},
    ConePlate{35, 1.5168, 6, 11.970269, 0.045163, 0.045296, 0.003764, 0.142735},
    ConePlate{35, 1.5168, 7, 11.958313, 0.033207, 0.033279, 0.002372, 0.077226},
    ConePlate{35, 1.5168, 10, 11.941395, 0.016289, 0.016307, 0.000814, 0.018604},
    ConePlate{35, 1.5688, 5, 12.755886, 0.065932, 0.066225, 0.006593, 0.299299},
    ConePlate{35, 1.5688, 6, 12.735802, 0.045848, 0.045990, 0.003821, 0.144907},
    ConePlate{35, 1.5688, 7, 12.723666, 0.033712, 0.033789, 0.002408, 0.078403},
    ConePlate{35, 1.5688, 10, 12.706492, 0.016538, 0.016556, 0.000827, 0.018888},
    ConePlate{100, 1.5168, 5, 34.257305, 0.185575, 0.186362, 0.018558, 0.842359},
    ConePlate{100, 1.5168, 6, 34.200768, 0.129038, 0.129418, 0.010753, 0.407814},
    ConePlate{100, 1.5168, 7, 34.166607, 0.094877, 0.095082, 0.006777, 0.220646},
    ConePlate{100, 1.5168, 10, 34.118271, 0.046541, 0.046590, 0.002327, 0.053154},
    ConePlate{100, 1.5688, 5, 36.445389, 0.188377, 0.189216, 0.018838, 0.855139},
    ConePlate{100, 1.5688, 6, 36.388007, 0.130995, 0.131400, 0.010916, 0.414019},
    ConePlate{100, 1.5688, 7, 36.353332, 0.096320, 0.096539, 0.006880, 0.224009},
    ConePlate{100, 1.5688, 10, 36.304263, 0.047251, 0.047304, 0.002363, 0.053966},
    ConePlate{145, 1.5168, 5, 49.673092, 0.269084, 0.270224, 0.026908, 1.221420},
    ConePlate{145, 1.5168, 6, 49.591113, 0.187105, 0.187656, 0.015592, 0.591331},
    ConePlate{145, 1.5168, 7, 49.541580, 0.137572, 0.137869, 0.009827, 0.319937},
    ConePlate{145, 1.5168, 10, 49.471493, 0.067485, 0.067556, 0.003374, 0.077073},
    ConePlate{145, 1.5688, 5, 52.845814, 0.273147, 0.274363, 0.027315, 1.239952},
    ConePlate{145, 1.5688, 6, 52.762610, 0.189943, 0.190530, 0.015829, 0.600328},
    ConePlate{145, 1.5688, 7, 52.712331, 0.139664, 0.139981, 0.009976, 0.324814},
    ConePlate{145, 1.5688, 10, 52.641181, 0.068514, 0.068591, 0.003426, 0.078250},
};

/// Plate tilted by `tilt` degrees: sagittal minus tangential focus, mm, to 1e-5, and sideways displacement of a ray,
/// mm, to 1e-6 (exact forms).
struct TiltedPlate {
    double thickness;
    double index;
    double tilt;
    double astigmatism;
    double displacement;
};
inline constexpr std::array tilted_plates{
    TiltedPlate{35, 1.5168, 1, -0.003974, 0.208156},
    TiltedPlate{35, 1.5168, 5, -0.099587, 1.043679},
    TiltedPlate{35, 1.5168, 45, -9.420059, 11.707479},
    TiltedPlate{100, 1.5168, 1, -0.011355, 0.594733},
    TiltedPlate{100, 1.5688, 2, -0.046126, 1.266156},
    TiltedPlate{2, 1.5168, 45, -0.538289, 0.668999},
};

/// Focus of F light behind that of C light, t (1/nC - 1/nF), mm, to 1e-6.
struct AxialColour {
    const char* glass;
    double thickness;
    double blue_minus_red;
};
inline constexpr std::array axial_colours{
    AxialColour{"N-BK7", 35, 0.122275},   AxialColour{"N-BK7", 100, 0.349356},
    AxialColour{"N-BK7", 145, 0.506566},  AxialColour{"N-BAK4", 35, 0.144143},
    AxialColour{"N-BAK4", 100, 0.411838}, AxialColour{"N-BAK4", 145, 0.597165},
    AxialColour{"N-SF5", 35, 0.259576},   AxialColour{"N-SF5", 100, 0.741645},
    AxialColour{"N-SF5", 145, 1.075385},
};

}  // namespace reference
