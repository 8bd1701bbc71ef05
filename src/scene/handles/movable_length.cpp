#include "scene/handles/movable_length.hpp"

#include <algorithm>
#include <cmath>

#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double reach_of_landmark_mm = 0.75;

// The head's setting is the observer's pupil distance.
std::optional<std::size_t> owner_of(const Setup& setup, std::size_t part) {
    const Role role = role_of(setup.parts[part]);
    if (role == Role::splitter) return setup.chosen.observer;
    if (role == Role::observer && part != setup.chosen.observer) return std::nullopt;
    return part;
}

bool is_in_front_of_all_lenses(const Setup& setup, std::size_t part) {
    return std::none_of(setup.parts.begin(),
                        setup.parts.begin() + static_cast<std::ptrdiff_t>(part),
                        [](const Part& one) { return kind_of(one.body).holds_lens; });
}

void take_from_drawtube(MovableLength& length, const FocusBudget& budget) {
    length.value = budget.drawtube.value;
    length.high = budget.travel.value;
    if (budget.primary) return;  // the mirror focuses
    length.landmark = budget.wanted_drawtube.value;
    length.landmark_word = "in focus";
}

// As much longer as the part gets, as much farther in the drawtube must stand: true before any lens.
void take_from_spacer(MovableLength& length, const FocusBudget& budget) {
    if (budget.primary) return;
    length.landmark =
        length.value + budget.wanted_drawtube.value - (budget.is_held ? budget.drawtube.value : 0);
    length.landmark_word = budget.is_held ? "in focus" : "the longest that reaches focus";
}

void take_from_head(MovableLength& length, const SplitterHead& head) {
    length.low = std::max(length.low, head.narrowest().value);
    length.high = std::min(length.high, head.widest().value);
    length.value = std::clamp(length.value, length.low, std::max(length.low, length.high));
}

// Up to the glass, mirror or lens on either side.
void take_from_lens(MovableLength& length, const Setup& setup, const Train& train) {
    const auto room = std::find_if(train.lens_rooms.begin(), train.lens_rooms.end(),
                                   [&](const LensRoom& one) { return one.part == length.part; });
    if (room == train.lens_rooms.end()) return;
    const auto words = [&](const LensNeighbour& face) {
        return fmt::format("at the {} of {}", face.face, setup.parts[face.part].name);
    };
    if (room->lowest() > length.low) {
        length.low = room->lowest();
        length.low_word = words(room->before);
    }
    if (room->highest() < length.high) {
        length.high = room->highest();
        length.high_word = words(room->behind);
    }
    length.value = std::clamp(length.value, length.low, std::max(length.low, length.high));
}

double on_step(double value, double step) { return std::round(value / step) * step; }

}  // namespace

std::optional<MovableLength>
movable_length(const Setup& setup, const Report& report, std::size_t index) {
    const auto owner = owner_of(setup, index);
    if (!owner) return std::nullopt;
    const Part& part = setup.parts[*owner];
    const PartKind& kind = kind_of(part.body);
    const auto field = std::find_if(kind.fields.begin(), kind.fields.end(),
                                    [](const FieldInfo& info) { return info.by_hand.has_value(); });
    if (field == kind.fields.end()) return std::nullopt;
    const HandHold& hold = *field->by_hand;
    const FieldValue stated = field_value(part.body, field->key).value();
    MovableLength length;
    length.part = *owner;
    length.key = field->key;
    length.moves = hold.moves;
    length.what = hold.what;
    length.label = length.what + " of " + part.name;
    length.how = hold.how;
    length.low = field->low;
    length.high = field->high;
    length.low_word = hold.low_word;
    length.high_word = hold.high_word;
    length.stated = stated;
    length.can_be_let_go = field->type == FieldType::optional_number;
    if (const auto* number = std::get_if<double>(&stated)) length.value = *number;
    switch (hold.moves) {
    case HandMoves::drawtube: take_from_drawtube(length, report.budget); break;
    case HandMoves::rear_end:
        if (is_in_front_of_all_lenses(setup, *owner)) take_from_spacer(length, report.budget);
        break;
    case HandMoves::arms: take_from_head(length, *find_part<SplitterHead>(setup)); break;
    case HandMoves::lens: take_from_lens(length, setup, report.train); break;
    }
    if (length.high <= length.low) return std::nullopt;  // a visual back that does not move
    return length;
}

double moved_value(const MovableLength& length, double by, Steps steps) {
    const double value = length.value + by;
    const bool is_at_landmark =
        length.landmark && std::abs(value - *length.landmark) <= reach_of_landmark_mm;
    const double wanted = steps == Steps::fine ? on_step(value, fine_step_mm)
                          : is_at_landmark     ? *length.landmark
                                               : on_step(value, half_step_mm);
    return std::clamp(wanted, length.low, length.high);
}

HeldLength::HeldLength(MovableLength at_press, Steps steps)
    : at_press_(std::move(at_press)), from_value_(at_press_.value), steps_(steps) {}

double HeldLength::value_after(double by, Steps steps) {
    const double share = steps_ == Steps::fine ? fine_share : 1;
    double free = from_value_ + share * (by - from_way_);
    if (steps != steps_) {
        free = std::clamp(free, at_press_.low, at_press_.high);
        from_value_ = free;
        from_way_ = by;
        steps_ = steps;
    }
    return moved_value(at_press_, free - at_press_.value, steps);
}

std::string length_text(double value) {
    const bool has_hundredths = std::abs(value - on_step(value, 0.1)) > 0.004;
    return fmt::format("{:.{}f} mm", value, has_hundredths ? 2 : 1);
}

std::string told_value(const MovableLength& length, double value) {
    constexpr double as_good_as = 0.004;
    std::string text = length_text(value);
    if (length.landmark && std::abs(value - *length.landmark) < as_good_as)
        text += ", " + length.landmark_word;
    if (value <= length.low) text += ": " + length.low_word;
    if (value >= length.high) text += ": " + length.high_word;
    return text;
}

}  // namespace beamfork
