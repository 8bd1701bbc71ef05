#include <algorithm>
#include <cmath>

#include "scene/unfolded_track.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double snap_mm = 0.5;

struct MovableLength {
    std::string_view kind;
    std::string_view key;
    const char* what;
    const char* help;
};

constexpr std::array movable_lengths{
    MovableLength{Spacer::key, "length_mm", "Length", "Drag to make it longer or shorter."},
    MovableLength{Shifter::key, "lens_offset_mm", "Lens position",
                  "Drag to move the lens along the light."},
    MovableLength{
        Focuser::key, "held_at_mm", "Drawtube",
        "Drag to hold the drawtube where you want it; double-click to let it focus again."},
};

const char* const how_to_move = " In steps of 0.5 mm, with Alt freely. With the keyboard: choose "
                                "the part, then Left and Right.";

}  // namespace

std::vector<Grip>
unfolded_grips(const Setup& setup, const Report& report, const UnfoldedPathRows& rows) {
    std::vector<Grip> grips;
    for (const PathStretch& stretch : rows.stretches) {
        const Part& part = setup.parts[stretch.part];
        const PartKind& kind = kind_of(part.body);
        for (const MovableLength& length : movable_lengths) {
            if (kind.key != length.kind) continue;
            const auto field =
                std::find_if(kind.fields.begin(), kind.fields.end(),
                             [&](const FieldInfo& info) { return info.key == length.key; });
            const auto value = field_value(part.body, length.key);
            if (field == kind.fields.end() || !value) continue;
            const bool is_focuser = length.kind == Focuser::key;
            const auto* number = std::get_if<double>(&*value);
            Grip grip;
            grip.part = stretch.part;
            grip.key = field->key;
            grip.label = std::string(length.what) + " of " + part.name;
            grip.value = is_focuser || number == nullptr ? report.budget.drawtube : *number;
            grip.anchor = is_focuser ? rows.zero : stretch.from;
            grip.at = grip.anchor + grip.value;
            grip.low = field->low;
            grip.high = is_focuser ? report.budget.travel : field->high;
            grip.can_be_let_go = field->type == FieldType::optional_number;
            if (grip.high <= grip.low) continue;  // a visual back that does not move
            grip.text = fmt::format("{:.1f} mm", grip.value);
            grip.help =
                fmt::format("{}: {}. {}{}", grip.label, grip.text, length.help, how_to_move);
            grips.push_back(std::move(grip));
        }
    }
    return grips;
}

double moved_value(const Grip& grip, double by, bool snaps) {
    double value = grip.value + by;
    if (snaps) value = std::round(value / snap_mm) * snap_mm;
    return std::clamp(value, grip.low, grip.high);
}

}  // namespace beamfork
