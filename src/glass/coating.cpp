#include "glass/coating.hpp"

#include <cmath>

namespace beamfork {

std::vector<std::string> anti_reflection_words() {
    return {"uncoated", "single layer", "multi-layer"};
}

std::vector<std::string> mirror_coating_words() {
    return {"protected aluminium", "enhanced aluminium", "protected silver", "dielectric"};
}

double fresnel_reflectance(double n_before, double n_after, Radians incidence) {
    const double cos_in = std::abs(std::cos(incidence.value));
    const double sin_out = n_before / n_after * std::sqrt(1 - cos_in * cos_in);
    if (sin_out >= 1) return 1;
    const double cos_out = std::sqrt(1 - sin_out * sin_out);
    const double across =
        (n_before * cos_in - n_after * cos_out) / (n_before * cos_in + n_after * cos_out);
    const double along =
        (n_after * cos_in - n_before * cos_out) / (n_after * cos_in + n_before * cos_out);
    return (across * across + along * along) / 2;
}

double quarter_wave_reflectance(double n_before, double n_layer, double n_after) {
    const double layer = n_layer * n_layer;
    const double media = n_before * n_after;
    const double amplitude = (layer - media) / (layer + media);
    return amplitude * amplitude;
}

double
face_reflectance(AntiReflection coating, double n_before, double n_after, Radians incidence) {
    if (n_before == n_after) return 0;
    switch (coating) {
    case AntiReflection::uncoated: return fresnel_reflectance(n_before, n_after, incidence);
    case AntiReflection::single_layer:
        return quarter_wave_reflectance(n_before, magnesium_fluoride_index, n_after);
    case AntiReflection::multi_layer: return 0.005;
    }
    return 0;
}

double mirror_reflectance(MirrorCoating coating) {
    switch (coating) {
    case MirrorCoating::aluminium: return 0.88;
    case MirrorCoating::enhanced_aluminium: return 0.95;
    case MirrorCoating::silver: return 0.97;
    case MirrorCoating::dielectric: return 0.99;
    }
    return 0;
}

}  // namespace beamfork
