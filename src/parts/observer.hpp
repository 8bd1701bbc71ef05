// Somebody who looks: the distance between the pupils, the correction each eye needs, the pupil's size.
#pragma once

#include "parts/kind.hpp"

namespace beamfork {

enum class Spectacles { taken_off, kept_on };

struct Observer {
    static constexpr std::string_view key = "observer";
    static constexpr std::string_view label = "Observer";
    static constexpr std::string_view help = "Somebody who looks through both eyepieces.";
    static constexpr Role role = Role::observer;
    static constexpr std::string_view measured_by = "Take it from a new spectacle prescription.";

    Millimetres pupil_distance{63};
    Dioptres left{
        0};  ///< spectacle prescription, negative when short-sighted: at the lens, not at the eye
    Dioptres right{0};
    Spectacles spectacles = Spectacles::taken_off;
    Millimetres spectacle_distance{17};  ///< front of the spectacle lens to the eye's pupil
    Millimetres eye_pupil{6};

    bool operator==(const Observer&) const = default;
    static std::vector<Field<Observer>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext&) const { return {}; }
    [[nodiscard]] std::optional<std::string> contradiction() const { return std::nullopt; }
    /// What the eyepiece must make up for: nothing while spectacles stay on; taken off, what the lens does at the eye.
    [[nodiscard]] Dioptres correction(Eye eye) const;
};

/// From a spectacle lens to the eye's principal point: 14 mm to the cornea (common practice, no source) and 1.6 mm on
/// (A. Gullstrand's schematic eye in H. von Helmholtz, Handbuch der physiologischen Optik, 3rd ed., vol. 1, 1909, from
/// memory).
inline constexpr Millimetres vertex_distance{15.6};

/// A lens of that power so far in front of the eye corrects as this one would at the eye: D / (1 - a D), for the far point
/// is the same (thin lenses).
Dioptres at_the_eye(Dioptres lens);

}  // namespace beamfork
