// Focus of one train for one observer and target by a plain sum: reduced lengths and thin lenses alone. The numbers are
// those of study/focus/focus_budget.hpp, which has them from a train that is built; a test holds the two together.
#pragma once

#include <array>

#include "plan/drawer_parts.hpp"

namespace beamfork {

struct CassegrainMovingMirror;
struct Focuser;

/// The straight axis from the drawtube's rear face to the head's entry face: lengths before each lens and behind the last.
struct Axis {
    static constexpr std::size_t most_lenses = 2;
    std::array<double, most_lenses + 1> lengths{};
    std::array<double, most_lenses> focal_lengths{};
    std::size_t lenses = 0;

    /// The lens stands at `before` behind where the axis ends now, which goes on from there.
    void add_lens(double before, double focal_length) {
        lengths[lenses] += before;
        focal_lengths[lenses] = focal_length;
        ++lenses;
    }
    void add_length(double length) { lengths[lenses] += length; }
    [[nodiscard]] bool can_take_lens() const { return lenses < most_lenses; }
};

struct QuickFocus {
    bool reaches = false;
    double margin_in = 0;  ///< as in FocusBudget
    double margin_out = 0;
    double factor = 1;  ///< of all lenses together
    double drawtube = 0;
    Millimetres primary_moved{0};
    [[nodiscard]] double margin() const { return margin_in < margin_out ? margin_in : margin_out; }
    /// mm that the drawtube cannot follow; 0 when it reaches.
    [[nodiscard]] double shortfall() const { return reaches ? 0 : -margin(); }
};

/// What of a tube bears on focus, laid out for speed.
class TubeFocus {
public:
    /// `tube` must outlive it.
    explicit TubeFocus(const Tube& tube);

    /// For the use at that index, of which the tube's back focus must be known.
    [[nodiscard]] QuickFocus
    focus(const Axis& axis, const Ending& ending, double seat_travel, std::size_t use) const;

    [[nodiscard]] bool can_see(std::size_t use) const { return tube_->back_focus[use].has_value(); }

private:
    void by_drawtube(QuickFocus& found, double back_focus, double needed) const;
    /// The back focus with the primary where it then stands.
    double by_primary(QuickFocus& found, std::optional<Millimetres> distance, double needed) const;

    const Tube* tube_;
    const Focuser* focuser_;
    const CassegrainMovingMirror* mirrors_;  ///< null: it focuses by its drawtube
};

}  // namespace beamfork
