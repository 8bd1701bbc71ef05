// The lengths of a setup that can be changed by taking hold of what they move: how far the drawtube is out, how long
// a spacer is, where a shifter's lens stands, how far apart the head's arms are. One list for the 3D picture and
// the unfolded path.
#pragma once

#include <optional>
#include <string>

#include "parts/field.hpp"

namespace beamfork {

struct Report;
struct Setup;

/// A field in mm with its present value and its stops.
struct MovableLength {
    std::size_t part = 0;  ///< whose field it is; the distance of the arms is the observer's
    std::string key;       ///< of the field
    HandMoves moves = HandMoves::rear_end;
    std::string what;      ///< "Length"
    std::string label;     ///< "Length of Thread adapter"
    std::string how;       ///< "Drag to make it longer or shorter."
    double value = 0;      ///< mm
    double low = 0;        ///< smallest value
    double high = 0;       ///< largest value
    std::string low_word;  ///< why not less: "fully in"
    std::string high_word;
    FieldValue stated;               ///< the field as it is, to be put back
    bool can_be_let_go = false;      ///< left unstated, the program finds it
    std::optional<double> landmark;  ///< a value worth stopping at ...
    std::string landmark_word;       ///< ... and why: "in focus"
};

/// The part's own; the head and the chosen observer share theirs. Nothing for parts that have none.
std::optional<MovableLength>
movable_length(const Setup& setup, const Report& report, std::size_t part);

enum class Steps {
    halves,  ///< whole half millimetres, and the landmark when it is near
    fine     ///< whole twentieths of a millimetre
};
constexpr double half_step_mm = 0.5;
constexpr double fine_step_mm = 0.05;
/// While fine, the pointer moves things so much less.
constexpr double fine_share = 0.1;

/// The value after a move of `by` mm: on a step and within the stops.
double moved_value(const MovableLength& length, double by, Steps steps);

/// A length that is held: turns the way of the pointer, in mm from the press, into values. While fine, it follows by
/// a tenth; changing between the two in mid-way moves nothing.
class HeldLength {
public:
    HeldLength(MovableLength at_press, Steps steps);
    double value_after(double by, Steps steps);
    [[nodiscard]] const MovableLength& at_press() const { return at_press_; }

private:
    MovableLength at_press_;
    double from_value_;
    double from_way_ = 0;
    Steps steps_;
};

/// "12.0 mm", with a second decimal where there is one.
std::string length_text(double value);
/// "12.0 mm, in focus", "0.0 mm: no shorter": the value with what is to be said of it.
std::string told_value(const MovableLength& length, double value);

}  // namespace beamfork
