// How much light a setup gives, in few figures, so that it can be laid beside the same setup after one change.
// Both are traced with the same rays: what a change leaves alone comes out equal to the last digit.
#pragma once

#include <optional>

#include "study/light/clipping.hpp"
#include "study/light/magnification.hpp"

namespace beamfork {

/// Means of both eyes.
struct GivenLight {
    Millimetres working_aperture;  ///< on axis
    double edge = 0;      ///< share of the objective's light at the field stop's edge, 0..1
    double into_eye = 0;  ///< share of the light on the whole aperture that enters one eye, 0..1
    double surface = 0;   ///< of something extended, against the naked eye, 0..1
    bool operator==(const GivenLight&) const = default;
};

/// The train must stand at its focus.
GivenLight given_light(const Setup& setup,
                       const Train& train,
                       const Magnification& magnification,
                       ClippingEffort effort);

/// Magnitudes that go from `before` to `after`: positive, less light. None where either of them is dark.
std::optional<double> magnitudes_lost(double before, double after);

}  // namespace beamfork
