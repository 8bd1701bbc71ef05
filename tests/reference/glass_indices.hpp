// Indices of refraction and Abbe numbers of the catalogued glasses at the spectral lines d, F, C and e.
//
// Source of all but fused silica: SCHOTT glass catalogue data of 2017-01-20, as held in M. N. Polyanskiy,
// "Refractiveindex.info database of optical constants", Scientific Data 11, 94 (2024). The catalogue's printed nd
// and Vd, with its last digit, are in `printed_glasses`; the six decimals of `glass_indices` are the Sellmeier sum of
// the catalogue's constants, done outside this program.
// Source of fused silica: I. H. Malitson, J. Opt. Soc. Am. 55, 1205-1208 (1965), Eq. (1) and Table I.
#pragma once

#include <array>

namespace reference {

struct GlassIndex {
    const char* glass;
    char line;
    double index;
};
inline constexpr std::array glass_indices{
    GlassIndex{"N-BK7", 'd', 1.516800},        GlassIndex{"N-BK7", 'F', 1.522376},
    GlassIndex{"N-BK7", 'C', 1.514322},        GlassIndex{"N-BK7", 'e', 1.518722},
    GlassIndex{"N-BAK4", 'd', 1.568827},       GlassIndex{"N-BAK4", 'F', 1.575911},
    GlassIndex{"N-BAK4", 'C', 1.565749},       GlassIndex{"N-BAK4", 'e', 1.571249},
    GlassIndex{"F2", 'd', 1.620040},           GlassIndex{"F2", 'F', 1.632081},
    GlassIndex{"F2", 'C', 1.615032},           GlassIndex{"F2", 'e', 1.624080},
    GlassIndex{"N-SF11", 'd', 1.784720},       GlassIndex{"N-SF11", 'F', 1.806513},
    GlassIndex{"N-SF11", 'C', 1.775955},       GlassIndex{"N-SF11", 'e', 1.791918},
    GlassIndex{"SF11", 'd', 1.784720},         GlassIndex{"SF11", 'F', 1.806454},
    GlassIndex{"SF11", 'C', 1.775988},         GlassIndex{"SF11", 'e', 1.791899},
    GlassIndex{"N-SF5", 'd', 1.672707},        GlassIndex{"N-SF5", 'F', 1.687496},
    GlassIndex{"N-SF5", 'C', 1.666638},        GlassIndex{"N-SF5", 'e', 1.677635},
    GlassIndex{"SF5", 'd', 1.672697},          GlassIndex{"SF5", 'F', 1.687495},
    GlassIndex{"SF5", 'C', 1.666610},          GlassIndex{"SF5", 'e', 1.677639},
    GlassIndex{"N-BAF10", 'd', 1.670030},      GlassIndex{"N-BAF10", 'F', 1.680000},
    GlassIndex{"N-BAF10", 'C', 1.665778},      GlassIndex{"N-BAF10", 'e', 1.673411},
    GlassIndex{"fused silica", 'd', 1.458464}, GlassIndex{"fused silica", 'F', 1.463126},
    GlassIndex{"fused silica", 'C', 1.456367}, GlassIndex{"fused silica", 'e', 1.460078},
};

struct AbbeNumber {
    const char* glass;
    double number;
};
inline constexpr std::array abbe_numbers{
    AbbeNumber{"N-BK7", 64.167},  AbbeNumber{"N-BAK4", 55.976},  AbbeNumber{"F2", 36.366},
    AbbeNumber{"N-SF11", 25.680}, AbbeNumber{"SF11", 25.757},    AbbeNumber{"N-SF5", 32.251},
    AbbeNumber{"SF5", 32.210},    AbbeNumber{"N-BAF10", 47.112}, AbbeNumber{"fused silica", 67.821},
};

/// As the catalogue prints them: five decimals of nd, two of Vd.
struct PrintedGlass {
    const char* glass;
    double nd;
    double Vd;
};
inline constexpr std::array printed_glasses{
    PrintedGlass{"N-BK7", 1.51680, 64.17}, PrintedGlass{"N-BAK4", 1.56883, 55.98},
    PrintedGlass{"F2", 1.62004, 36.37},    PrintedGlass{"N-SF11", 1.78472, 25.68},
    PrintedGlass{"SF11", 1.78472, 25.76},  PrintedGlass{"N-SF5", 1.67271, 32.25},
    PrintedGlass{"SF5", 1.67270, 32.21},   PrintedGlass{"N-BAF10", 1.67003, 47.11},
};

/// Wavelengths in nm: R. Paschotta, Encyclopedia of Laser Physics and Technology, "Standard spectral lines", Table 1.
inline constexpr double line_d_nm = 587.5618;
inline constexpr double line_F_nm = 486.1327;
inline constexpr double line_C_nm = 656.2725;
inline constexpr double line_e_nm = 546.0740;

}  // namespace reference
