// The reach table: every eyepiece pair with every observer and every target. Where the drawtube must stand,
// how far it misses, what changing eyepieces costs in refocus, how each seat must be set for its eye, and the
// one stretch of drawtube positions, if any, at which the seats alone serve everybody. Reduced mm.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "study/focus/focus_budget.hpp"

namespace beamfork {

/// How one eyepiece must stand in its seat for its eye while the drawtube serves the mean of both eyes and of both arms,
/// as far as it goes.
struct SeatSetting {
    Millimetres shift;  ///< from the middle of the seat's travel, positive away from the telescope
    Dioptres dioptres{
        0};  ///< the same as a dioptre scale reads it: negative is in, for a short-sighted eye
    bool is_in_travel = true;
};

/// Drawtube extensions from `low` to `high`; none lie in it when high < low.
struct DrawtubeRange {
    Millimetres low;
    Millimetres high;
    [[nodiscard]] bool is_empty() const { return high < low; }
    bool operator==(const DrawtubeRange&) const = default;
};

struct ReachEntry {
    Choice choice;
    Millimetres drawtube{};  ///< wanted extension, whether the drawtube can stand there or not
    bool reaches = false;
    Millimetres margin_in{};  ///< as in FocusBudget
    Millimetres margin_out{};
    Millimetres shortfall{};
    bool shortfall_is_inward = true;
    Millimetres
        refocus{};  ///< drawtube against the table's reference eyepiece, same observer and target
    bool is_parfocal = true;           ///< that is within the depth of focus
    std::array<SeatSetting, 2> seats;  ///< left, right
    bool pupil_distance_fits = true;
    DrawtubeRange served;  ///< within the travel, where both seats can bring both eyes to focus
    /// In focus, and the head can be set so that both eyes look through it.
    [[nodiscard]] bool is_usable() const { return reaches && pupil_distance_fits; }
};

/// Two entries that no drawtube position serves together (the same index twice: it is not served at all).
struct ReachConflict {
    std::size_t innermost = 0;  ///< index into entries: must stand farther in than ...
    std::size_t outermost = 0;  ///< ... this one can follow
    Millimetres gap;            ///< between what the two can do
};

struct ReachTable {
    std::vector<ReachEntry> entries;    ///< eyepieces outermost, then observers, then targets
    std::vector<std::size_t> left_out;  ///< parts that stand in no entry (focus/combinations.hpp)
    std::size_t reference_eyepiece = 0;
    /// A moving-mirror telescope: what is called drawtube here is the light path left over at its stated back
    /// focus, which the main mirror (and the drawtube, once it is fully down) makes up; negative: it must move up.
    bool by_primary = false;
    Millimetres travel;
    Millimetres depth_of_focus;  ///< +- at the drawtube that nobody sees
    DrawtubeRange common;        ///< intersection of all `served`
    std::optional<ReachConflict>
        conflict;  ///< what prevents a common one; nothing when there is one

    [[nodiscard]] std::size_t reaching() const;  ///< focus, whether the head fits the eyes or not
    [[nodiscard]] std::size_t usable() const;
    [[nodiscard]] const ReachEntry& of(const Choice& choice) const;  ///< must be in it
};

/// Every combination of the setup, as far as focus/combinations.hpp studies them; refocus is against the chosen eyepiece
/// pair. Errors as build_train.
Result<ReachTable> reach_table(const Setup& setup, const Choice& chosen);

/// The same table with refocus against another eyepiece pair, an index into Setup::parts.
ReachTable held_against(ReachTable table, std::size_t eyepiece);

/// Drawtube positions (not limited by its travel) at which this eye's seat, moved by up to `seat_travel`
/// either way, brings its field stop to where the eye wants the image.
DrawtubeRange seat_range(const Train& train, Eye eye, Millimetres seat_travel);

}  // namespace beamfork
