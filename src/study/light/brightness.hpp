// Brightness: what every surface that light meets lets through, how much of the telescope's light enters
// each eye, and what that means beside one eye at the same telescope without the head. Shares run from 0
// to 1; magnitudes are 2.5 log10 of a ratio of light, so that a loss counts positive.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "study/light/magnification.hpp"
#include "train/train.hpp"

namespace beamfork {

/// What becomes of the light at one surface.
struct LightStep {
    std::size_t part = 0;
    std::string face;  ///< "prism entry face", "cube interface", "lenses"
    double passes = 1;
    std::string why;  ///< "multi-layer coating", "total reflection", "half-mirror"
    bool is_split = false;
    bool is_filter = false;  ///< wanted: a filter with a stated transmission
};

struct EyeBrightness {
    std::vector<LightStep> steps;  ///< in the order in which light meets them; the eyepiece last
    double throughput = 1;         ///< all steps together
    double coatings = 1;           ///< all steps but the split and filters of stated transmission
    double on_axis = 1;            ///< share of the objective's light that no opening stops
    double unobstructed = 1;       ///< share of the aperture that no secondary mirror or vane hides
    double into_pupil = 1;         ///< share of the exit pupil's light that meets the eye's pupil
    double surface_brightness =
        0;  ///< of something extended, against the naked eye with this pupil

    /// Share of the light on the whole aperture that enters this eye.
    [[nodiscard]] double total() const { return throughput * on_axis * unobstructed * into_pupil; }
};

/// What two eyes gain over one in contrast: from the square root of 2 (F. W. Campbell & D. G. Green, Nature
/// 208, 191-192, 1965) to 1.6 ("Two eyes: sqrt2 better than one?", Acta Psychologica 131(2), 2009).
inline constexpr std::array two_eye_gain{1.41421356, 1.6};

struct Brightness {
    std::array<EyeBrightness, 2> eyes;  ///< left, right
    double without_head = 1;  ///< throughput for one eye at the same telescope, head taken out
    Millimetres exit_pupil;
    Millimetres eye_pupil;

    /// Change of the faintest star that one of the two eyes sees, against one eye without the head, in
    /// magnitudes, from the mean of both eyes; negative: less deep.
    [[nodiscard]] double one_eye_change() const;
    /// The same for both eyes together with the published gain of two eyes: smaller and larger.
    [[nodiscard]] std::array<double, 2> two_eye_change() const;
    /// How much less the dimmer eye gets than the other, 0..1.
    [[nodiscard]] double difference() const;
};

double magnitudes(double share);  ///< lost when only that share arrives

/// `on_axis`: share of the objective's light that no opening stops on the way to either eye (study/light/clipping).
Brightness brightness(const Setup& setup,
                      const Train& train,
                      const std::array<double, 2>& on_axis,
                      const Magnification& magnification);

}  // namespace beamfork
