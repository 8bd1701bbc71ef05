// Total reflection at the 45 degree face of a prism: the steepest ray of a cone that is still held, and the share of
// the pupil that leaks when the beam is faster.
//
// sin(theta) = (sqrt(n^2 - 1) - 1) / sqrt(2) outside the glass, fastest f-number 1 / (2 tan theta): derived from
// Snell's law, checked by direct refraction outside this program; shares from a 600 x 600 grid over the pupil.
#pragma once

#include <array>

namespace reference {

/// Critical angle inside and half of the fastest cone outside, degrees; fastest f-number; all to 1e-4.
struct ReflectionLimit {
    double index;
    double critical_angle;
    double half_cone;
    double fastest;
};
inline constexpr std::array reflection_limits{
    ReflectionLimit{1.516800, 41.2452, 5.7006, 5.0088},
    ReflectionLimit{1.518722, 41.1816, 5.8047, 4.9184},
    ReflectionLimit{1.514322, 41.3274, 5.5664, 5.1304},
    ReflectionLimit{1.568830, 39.5995, 8.4909, 3.3492},
    ReflectionLimit{1.565749, 39.6929, 8.3271, 3.4161},
    ReflectionLimit{1.672710, 36.7148, 13.9478, 2.0132},
    ReflectionLimit{1.458464, 43.2870, 2.4988, 11.4573},
};

/// Share of the pupil lost at one face for a chief ray leaning `lean` degrees towards failure; to 0.003 (grid).
struct ReflectionLoss {
    double index;
    double f_number;
    double lean;
    double share;
};
inline constexpr std::array reflection_losses{
    ReflectionLoss{1.5168, 4, 0, 0.0503},
    ReflectionLoss{1.5168, 4, 2, 0.1785},
    ReflectionLoss{1.5168, 6, 2, 0.0586},
    ReflectionLoss{1.56883, 3, 0, 0.0187},
};

}  // namespace reference
