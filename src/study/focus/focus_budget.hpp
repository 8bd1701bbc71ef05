// The focus budget: what every part takes from the light path behind the drawtube, what shifters give
// back, where the drawtube must stand so that the image falls on the field stops, and by how much it
// fails when it cannot. All lengths in reduced (air-equivalent) mm at the primary wavelength.
//
// A moving-mirror telescope focuses by its primary first: the drawtube stays where it is held, or racked in until the
// primary is fully down and the image still falls too far out. Margins are what both leave, told as mm of back focus.
//
// Where the drawtube cannot follow by so little that the seats can, they do: that is reach, too.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "study/focus/budget_entry.hpp"
#include "train/train.hpp"

namespace beamfork {

/// What rounding may leave of a length: an exact fit still reaches.
inline constexpr Millimetres exact_fit{1e-9};

/// One step of the waterfall: `change` is what it adds (+) to or takes (-) from what is left, `left` is
/// what remains after it. The first row is the telescope's back focus, the last what is left: the
/// drawtube's extension at focus.
struct BudgetRow {
    BudgetEntry entry = BudgetEntry::spends;
    std::string label;
    std::optional<std::size_t> part;
    Millimetres change;
    Millimetres left;
};

/// A focus shifter at work, from its real distance to the field stop.
struct ShifterAtWork {
    std::size_t part = 0;
    Millimetres image_distance;  ///< lens to the wanted image, reduced
    double factor = 1;
    Millimetres gain;  ///< light path given back
};

/// The primary of a moving-mirror telescope at work. Light path costs focal length: `focal_length_per_mm`.
struct PrimaryFocus {
    Millimetres wanted;  ///< moved towards the sky from its middle, where focus wants it
    Millimetres moved;   ///< where it stands: there, or at the nearer end of its travel
    Millimetres travel_up;
    Millimetres travel_down;
    Millimetres back_focus;  ///< at this focus; the middle position's is `stated_back_focus`
    Millimetres stated_back_focus;
    Millimetres focal_length;  ///< at this focus; the middle position's is `stated_focal_length`
    Millimetres stated_focal_length;
    double focal_length_per_mm = 0;  ///< gained per mm of back focus: f1 / |f2|
};

struct FocusBudget {
    std::vector<BudgetRow> rows;
    std::vector<ShifterAtWork> shifters;  ///< from the telescope backwards
    Millimetres
        wanted_drawtube;   ///< extension at which the image falls where the observer wants it;
                           ///< with a moving mirror: with the primary where it stands
    Millimetres drawtube;  ///< where it stands: there, or at the nearer end, or where it is held
    Millimetres travel;    ///< of the drawtube
    std::optional<PrimaryFocus> primary;  ///< of a moving-mirror telescope, which focuses by it
    bool reaches = false;                 ///< by the drawtube (or the primary), the seats, or both
    Millimetres
        margin_in;  ///< travel left inward of focus; negative when focus lies beyond the inner end
    Millimetres margin_out;  ///< travel left outward of focus; negative when beyond the outer end
    Millimetres shortfall;   ///< by which the drawtube cannot follow; 0 when it reaches
    bool shortfall_is_inward = true;
    bool is_held = false;
    bool lens_in_glass = false;  ///< a lens is said to stand in glass: solved with it at that face
    Millimetres seats_take_up;   ///< what both seats move outward because the drawtube cannot
    Millimetres seats_lack;  ///< what each seat lacks to bring both eyes of unequal arms to focus
                             ///< at once; not reached then, though nothing is short
    Millimetres arm_difference;           ///< light path of the left arm less the right, reduced
    [[nodiscard]] double factor() const;  ///< of all shifters together
    [[nodiscard]] Millimetres primary_moved() const;  ///< 0 when the telescope has no moving mirror
    /// True of a moving-mirror telescope whose drawtube is racked out because the mirror cannot go on.
    [[nodiscard]] bool drawtube_helps() const {
        return primary && !is_held && drawtube > Millimetres{};
    }
};

/// "both eyepieces 0.1 mm in": what the seats take up; they must take up something.
std::string seats_words(const FocusBudget& budget);

/// "the arms differ by 10.8 mm in light path, of which the seats lack 2.4 mm on either side": unequal arms that the seats
/// cannot make up.
std::string arms_words(const FocusBudget& budget);

/// Back focus the chain needs so that an image forms `wanted_image` behind the field stop: the stop's
/// image thrown back through the chain to the drawtube's rear face. Appends the shifters met.
Millimetres needed_back_focus(const EyePath& path,
                              Millimetres wanted_image,
                              std::vector<ShifterAtWork>* shifters = nullptr);

/// Where the image really falls, behind this eye's field stop, for the drawtube as the train has it.
Millimetres image_behind_stop(const Train& train, Eye eye);

/// A point of the real, folded axis at a reduced distance behind (+) or before (-) the field stop. It
/// does not go back through a lens: what lies before the last one is not in this image's space.
Point point_near_stop(const EyePath& path, Millimetres reduced_behind_stop);

/// Why nothing that follows from this focus would mean anything: a lens that stands behind the image or, where it gathers
/// light, farther before it than its focal length, so that its factor is not above 0.
Result<void> lenses_can_work(const Setup& setup, const FocusBudget& budget);

/// Solves the focus for this choice and returns the budget. Errors as build_train and lenses_can_work.
Result<FocusBudget> focus_budget(const Setup& setup, const Choice& choice);

/// The same without `rows`, the words of which cost as much as the focus: for those who solve it many times.
Result<FocusBudget> solved_focus(const Setup& setup, const Choice& choice);

/// The same from axes that stand with the drawtube racked in and the primary in its middle; lenses are not judged.
FocusBudget solved_focus(const Setup& setup, const Train& axes);

/// The train with drawtube and primary where the budget puts them. Errors as build_train.
Result<Train> focused_train(const Setup& setup, const Choice& choice, const FocusBudget& budget);

}  // namespace beamfork
