// The splitter head: a cube divides the beam and prisms carry it to both eyes, by one of two mechanisms.
//
// Hinged: a right-angle prism carries the reflected half to the left eye, a rhomboid the other half to the
// right eye. Both arms turn about the entry axis on the hinge, which changes the pupil distance and no
// path. With prism width A and arm offset h (axis to axis), the air gap beside the cube is h - A in both
// arms, the glass 2A + h, and a block of length h in the left arm makes both leave at the same height.
//
// Sliding: the rhomboid is cut in two right-angle prisms, of which the inner one is cemented to the cube.
// The outer prism of each arm slides sideways with its eyepiece. With pupil distance d the air gap is
// d / 2 - A in both arms, the glass 3A with a block of length A in the left arm: each arm gains half a
// millimetre of light path for every millimetre of pupil distance. Two reflections in either arm, in one
// plane, leave both images alike.
//
// A leaflet states light path, openings and prism width, not where the glass stands between entry face and seats:
// what is left unstated of that is derived (`inside`).
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"
#include "parts/prism_errors.hpp"
#include "parts/prisms.hpp"

namespace beamfork {

enum class PrismsStand { true_to_place, slightly_off };

/// How the head is set to an observer's pupil distance.
enum class Mechanism { hinged, sliding };

/// Where the glass stands between entry face and seats, as stated or as it must be for the stated light path.
struct HeadInside {
    Millimetres entry_air;    ///< entry face to cube
    Millimetres seat_height;  ///< last glass face to seat
    Millimetres
        deepest_cube;  ///< the entry air may be as long as that: `entry_air` itself when stated
    Millimetres lowest_seat;  ///< the seat height may be as short as that: 0 when stated
};

struct SplitterHead {
    static constexpr std::string_view key = "splitter_head";
    static constexpr std::string_view label = "Splitter head";
    static constexpr std::string_view help =
        "Prisms that divide the beam and carry it to two eyepieces.";
    static constexpr Role role = Role::splitter;
    static constexpr std::string_view measured_by = light_path_by_refocusing;

    Mechanism mechanism = Mechanism::hinged;
    Millimetres entry_clear{25};
    Millimetres nose_length{8};            ///< entry face to the nose's front end
    std::optional<Millimetres> entry_air;  ///< entry face to cube; unstated: as `inside` has it
    Millimetres prism_width{25};
    Millimetres arm_offset{
        37};  ///< entry axis to each eyepiece's axis, with sliding arms at their widest
    std::optional<Millimetres>
        slide;  ///< of each sliding arm, inward from there; unstated: all it can
    std::optional<Millimetres> compensator;  ///< unstated: what makes both arms equal
    std::string glass = "N-BAK4";
    FaceCoating reflecting_faces = FaceCoating::bare;
    AntiReflection coating = AntiReflection::multi_layer;
    double reflected_percent = 50;  ///< of what the cube does not lose: goes to the left eye
    double splitter_loss_percent = 0;
    PrismsStand prisms_stand = PrismsStand::true_to_place;
    PrismErrors cube_errors;  ///< these count only while the prisms stand slightly off
    PrismErrors arm_prism_errors;
    PrismErrors rhomboid_errors;     ///< of a hinged head
    PrismErrors inner_prism_errors;  ///< of a sliding head's right arm, against the cube
    PrismErrors outer_prism_errors;  ///< of a sliding head's right arm
    Millimetres exit_clear{24};
    std::optional<Millimetres> seat_height;  ///< last glass face to the seat on which the eyepieces
                                             ///< rest; unstated: as `inside` has it
    Millimetres seat_travel{3};  ///< each eyepiece's own focus adjustment, plus or minus
    Degrees hinge_low{5};
    Degrees hinge_high{45};
    std::optional<Millimetres>
        stated_light_path;  ///< of a sliding head: at the middle of its range
    Mount mount{};

    bool operator==(const SplitterHead&) const = default;
    static std::vector<Field<SplitterHead>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;

    [[nodiscard]] bool is_sliding() const { return mechanism == Mechanism::sliding; }
    /// Without a stated light path, unstated lengths are the usual ones. With one they shrink or grow together, in
    /// proportion to the usual ones, until the left arm's path is the stated one, as far as there is room for
    /// cube and seat; what cannot fit is left to the train, as a difference that it shows.
    [[nodiscard]] HeadInside inside() const;
    /// As stated, or as long as the glass that the right arm has beyond cube and arm prism: the rhomboid's
    /// offset when hinged, one prism when sliding.
    [[nodiscard]] Millimetres compensator_length() const {
        return compensator.value_or(is_sliding() ? prism_width : arm_offset);
    }
    /// Share of the light at the cube's interface that goes to that eye, 0..1.
    [[nodiscard]] double split_share(Eye eye) const;

    /// The range of pupil distances, whatever the mechanism.
    [[nodiscard]] Millimetres narrowest() const;
    [[nodiscard]] Millimetres widest() const;
    [[nodiscard]] Millimetres middle() const { return (narrowest() + widest()) / 2; }
    [[nodiscard]] bool reaches(Millimetres pupil_distance) const;

    /// How far each arm drops from the straight line through both for this pupil distance, clamped to
    /// what the arms can do: cos(hinge) = pupil distance / (2 arm offset). Sliding arms do not drop.
    [[nodiscard]] Degrees hinge_for(Millimetres pupil_distance) const;
    [[nodiscard]] Millimetres pupil_distance_at(Degrees hinge) const;
    /// Along each arm from the entry axis to the eyepiece's axis, clamped likewise: the arm offset of a
    /// hinged arm, half the pupil distance of a sliding one.
    [[nodiscard]] Millimetres arm_length_for(Millimetres pupil_distance) const;
    /// Air that each arm has more than at the middle of the range, where a light path is stated.
    [[nodiscard]] Millimetres path_beyond_middle(Millimetres pupil_distance) const;
};

}  // namespace beamfork
