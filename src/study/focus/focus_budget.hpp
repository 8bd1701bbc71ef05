// The focus budget: what every part takes from the light path behind the drawtube, what shifters give
// back, where the drawtube must stand so that the image falls on the field stops, and by how much it
// fails when it cannot. All lengths in reduced (air-equivalent) mm at the primary wavelength.
//
// A moving-mirror telescope focuses by its primary instead: the drawtube stays where it is held (racked in when
// it is not), and margins are what the primary's travel leaves, told as mm of back focus.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "train/train.hpp"

namespace beamfork {

enum class BudgetEntry { available, spends, gives_back, observer, left_over };

/// One step of the waterfall: `change` is what it adds (+) to or takes (-) from what is left, `left` is
/// what remains after it. The first row is the telescope's back focus, the last what is left: the
/// drawtube's extension at focus.
struct BudgetRow {
    BudgetEntry entry = BudgetEntry::spends;
    std::string label;
    std::optional<std::size_t> part;
    double change = 0;
    double left = 0;
};

/// A focus shifter at work, from its real distance to the field stop.
struct ShifterAtWork {
    std::size_t part = 0;
    double image_distance = 0;  ///< lens to the wanted image, reduced mm
    double factor = 1;
    double gain = 0;  ///< mm of light path given back
};

/// The primary of a moving-mirror telescope at work. Light path costs focal length: `focal_length_per_mm`.
struct PrimaryFocus {
    double wanted = 0;  ///< moved towards the sky from its middle, where focus wants it, mm
    double moved = 0;   ///< where it stands: there, or at the nearer end of its travel
    double travel_up = 0;
    double travel_down = 0;
    double back_focus = 0;  ///< at this focus; the middle position's is `stated_back_focus`
    double stated_back_focus = 0;
    double focal_length = 0;  ///< at this focus; the middle position's is `stated_focal_length`
    double stated_focal_length = 0;
    double focal_length_per_mm = 0;  ///< gained per mm of back focus: f1 / |f2|
};

struct FocusBudget {
    std::vector<BudgetRow> rows;
    std::vector<ShifterAtWork> shifters;  ///< from the telescope backwards
    double wanted_drawtube =
        0;                ///< extension at which the image falls where the observer wants it;
                          ///< with a moving mirror: with the primary where it stands
    double drawtube = 0;  ///< where it stands: there, or at the nearer end, or where it is held
    double travel = 0;    ///< of the drawtube
    std::optional<PrimaryFocus> primary;  ///< of a moving-mirror telescope, which focuses by it
    bool reaches = false;
    double margin_in =
        0;  ///< travel left inward of focus; negative when focus lies beyond the inner end
    double margin_out = 0;  ///< travel left outward of focus; negative when beyond the outer end
    double shortfall = 0;   ///< mm by which the drawtube cannot follow; 0 when it reaches
    bool shortfall_is_inward = true;
    bool is_held = false;
    double arm_difference = 0;            ///< light path of the left arm less the right, reduced mm
    [[nodiscard]] double factor() const;  ///< of all shifters together
    [[nodiscard]] Millimetres primary_moved() const;  ///< 0 when the telescope has no moving mirror
};

/// Back focus the chain needs so that an image forms `wanted_image` behind the field stop: the stop's
/// image thrown back through the chain to the drawtube's rear face. Appends the shifters met.
double needed_back_focus(const EyePath& path,
                         double wanted_image,
                         std::vector<ShifterAtWork>* shifters = nullptr);

/// Where the image really falls, behind this eye's field stop, for the drawtube as the train has it.
double image_behind_stop(const Train& train, Eye eye);

/// A point of the real, folded axis at a reduced distance behind (+) or before (-) the field stop. It
/// does not go back through a lens: what lies before the last one is not in this image's space.
Point point_near_stop(const EyePath& path, double reduced_behind_stop);

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
