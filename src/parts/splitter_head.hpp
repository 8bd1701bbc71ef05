// The splitter head: a cube divides the beam, a right-angle prism carries the reflected half to the left
// eye, a rhomboid prism the other half to the right eye, and a glass block makes both arms equal in
// glass and in path. Both arms turn about the entry axis on the hinge, which changes the pupil
// distance and no path.
//
// With prism width A and arm offset h (axis to axis), the air gap beside the cube is h - A in both arms,
// the glass 2A + h, and a block of length h in the left arm makes both leave at the same height.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"
#include "parts/prism_errors.hpp"
#include "parts/prisms.hpp"

namespace beamfork {

enum class PrismsStand { true_to_place, slightly_off };

struct SplitterHead {
    static constexpr std::string_view key = "splitter_head";
    static constexpr std::string_view label = "Splitter head";
    static constexpr std::string_view help =
        "Prisms that divide the beam and carry it to two eyepieces.";
    static constexpr Role role = Role::splitter;

    Millimetres entry_clear{25};
    Millimetres nose_length{8};  ///< entry face to the nose's front end
    Millimetres entry_air{14};   ///< entry face to cube
    Millimetres prism_width{25};
    Millimetres arm_offset{37};              ///< entry axis to each eyepiece's axis
    std::optional<Millimetres> compensator;  ///< unstated: as long as the arm offset
    std::string glass = "N-BAK4";
    FaceCoating reflecting_faces = FaceCoating::bare;
    AntiReflection coating = AntiReflection::multi_layer;
    double reflected_percent = 50;  ///< of what the cube does not lose: goes to the left eye
    double splitter_loss_percent = 0;
    PrismsStand prisms_stand = PrismsStand::true_to_place;
    PrismErrors cube_errors;  ///< these count only while the prisms stand slightly off
    PrismErrors arm_prism_errors;
    PrismErrors rhomboid_errors;
    Millimetres exit_clear{24};
    Millimetres seat_height{30};  ///< last glass face to the seat on which the eyepieces rest
    Millimetres seat_travel{3};   ///< each eyepiece's own focus adjustment, plus or minus
    Degrees hinge_low{5};
    Degrees hinge_high{45};
    std::optional<Millimetres> stated_light_path;
    Mount mount{};

    bool operator==(const SplitterHead&) const = default;
    static std::vector<Field<SplitterHead>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;

    [[nodiscard]] Millimetres compensator_length() const {
        return compensator.value_or(arm_offset);
    }
    /// Share of the light at the cube's interface that goes to that eye, 0..1.
    [[nodiscard]] double split_share(Eye eye) const;

    /// How far each arm drops from the straight line through both for this pupil distance, clamped to
    /// what the arms can do: cos(hinge) = pupil distance / (2 arm offset).
    [[nodiscard]] Degrees hinge_for(Millimetres pupil_distance) const;
    [[nodiscard]] Millimetres pupil_distance_at(Degrees hinge) const;
    [[nodiscard]] bool hinge_reaches(Millimetres pupil_distance) const;
    /// The range of pupil distances, whatever the mechanism.
    [[nodiscard]] Millimetres narrowest() const { return pupil_distance_at(hinge_high); }
    [[nodiscard]] Millimetres widest() const { return pupil_distance_at(hinge_low); }
    [[nodiscard]] bool reaches(Millimetres pupil_distance) const {
        return hinge_reaches(pupil_distance);
    }
};

}  // namespace beamfork
