#include "study/focus/focus_budget.hpp"

#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

double FocusBudget::factor() const {
    double product = 1;
    for (const ShifterAtWork& shifter : shifters)
        product *= shifter.factor;
    return product;
}

Millimetres FocusBudget::primary_moved() const { return primary ? primary->moved : Millimetres{}; }

std::string seats_words(const FocusBudget& budget) {
    return fmt::format("both eyepieces {:.1f} mm {}", abs(budget.seats_take_up).value,
                       budget.seats_take_up < Millimetres{} ? "in" : "out");
}

std::string arms_words(const FocusBudget& budget) {
    return fmt::format("the arms differ by {:.1f} mm in light path, of which the seats lack {:.1f} "
                       "mm on either side",
                       abs(budget.arm_difference).value, budget.seats_lack.value);
}

Millimetres needed_back_focus(const EyePath& path,
                              Millimetres wanted_image,
                              std::vector<ShifterAtWork>* shifters) {
    Millimetres distance =
        wanted_image;  // from the present place on the axis to the image, along the light
    for (auto step = path.steps.rbegin(); step != path.steps.rend(); ++step) {
        if (step->lens_focal_length != 0) {
            const Millimetres focal{step->lens_focal_length};
            const double factor = shifter_factor(focal, distance);
            if (shifters)
                shifters->push_back({step->part, distance, factor, distance - distance / factor});
            distance = distance / factor;
        }
        distance += Millimetres{step->reduced()};
    }
    if (shifters) std::reverse(shifters->begin(), shifters->end());
    return distance;
}

namespace {

// Of the image as it lies behind the drawtube's rear face.
Millimetres image_through(const EyePath& path, Millimetres behind_drawtube) {
    double distance = behind_drawtube.value;
    for (const AxialStep& step : path.steps) {
        distance -= step.reduced();
        if (step.lens_focal_length != 0) distance = 1 / (1 / distance + 1 / step.lens_focal_length);
    }
    return {distance};
}

}  // namespace

Millimetres image_behind_stop(const Train& train, Eye eye) {
    return image_through(train.path(eye), Millimetres{train.back_focus} - train.drawtube);
}

Point point_near_stop(const EyePath& path, Millimetres reduced_behind_stop) {
    const Pose& stop = path.world_from_field_stop;
    if (reduced_behind_stop >= Millimetres{})
        return stop.point_out({0, 0, reduced_behind_stop.value});
    double remaining = -reduced_behind_stop.value;
    for (auto step = path.steps.rbegin(); step != path.steps.rend(); ++step) {
        if (step->lens_focal_length != 0) return step->to;
        const double reduced = step->reduced();
        if (reduced > 0 && remaining <= reduced)
            return glm::mix(step->to, step->from, remaining / reduced);
        remaining -= reduced;
    }
    const Point rear = path.steps.front().from;
    return rear - remaining * glm::normalize(path.steps.front().to - rear);
}

namespace {

class Waterfall {
public:
    void
    add(BudgetEntry entry, std::string label, std::optional<std::size_t> part, Millimetres change) {
        left_ += change;
        rows_.push_back({entry, std::move(label), part, change, left_});
    }
    [[nodiscard]] Millimetres left() const { return left_; }
    [[nodiscard]] std::vector<BudgetRow> take() { return std::move(rows_); }

private:
    std::vector<BudgetRow> rows_;
    Millimetres left_;
};

void add_available(Waterfall& waterfall,
                   const Setup& setup,
                   const Train& train,
                   const FocusBudget& budget) {
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const Millimetres at_infinity = telescope_of(setup).back_focus;
    waterfall.add(BudgetEntry::available, setup.parts[telescope].name + ": back focus", telescope,
                  at_infinity);
    if (budget.primary) {
        const Millimetres gained = budget.primary->back_focus - at_infinity;
        if (gained == Millimetres{}) return;
        const Millimetres moved = budget.primary->moved;
        waterfall.add(gained > Millimetres{} ? BudgetEntry::gives_back : BudgetEntry::spends,
                      fmt::format("{}: main mirror {:.1f} mm {}", setup.parts[telescope].name,
                                  abs(moved).value, moved > Millimetres{} ? "up" : "down"),
                      telescope, gained);
        return;
    }
    if (const Millimetres now{train.back_focus}; now != at_infinity) {
        waterfall.add(BudgetEntry::gives_back,
                      setup.parts[train.choice.target].name + ": near target focuses farther out",
                      train.choice.target, now - at_infinity);
    }
}

// What the observer's eyes, filters in the barrels and unequal arms ask for: the drawtube serves the mean of both sides.
void add_eyes_and_arms(Waterfall& waterfall, const Setup& setup, const Train& train) {
    const auto& pair = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    const Millimetres given_left = pair.filter_shift(Eye::left);
    const Millimetres given_right = pair.filter_shift(Eye::right);
    if (train.focus_offset != 0) {
        waterfall.add(BudgetEntry::observer,
                      setup.parts[train.choice.observer].name + ": eyes' correction",
                      train.choice.observer, Millimetres{-train.focus_offset});
    }
    if (const Millimetres given = (given_left + given_right) / 2; given > Millimetres{}) {
        const bool in_both = given_left > Millimetres{} && given_right > Millimetres{};
        waterfall.add(BudgetEntry::gives_back,
                      fmt::format("{}: filter{}", setup.parts[train.choice.eyepiece].name,
                                  in_both ? "s in both barrels" : " in one barrel, half of it"),
                      train.choice.eyepiece, given);
    }
    if (const Millimetres arms = Millimetres{train.arm_difference} + given_left - given_right;
        abs(arms) > exact_fit) {
        const bool is_left_longer = arms > Millimetres{};
        waterfall.add(
            is_left_longer ? BudgetEntry::gives_back : BudgetEntry::spends,
            fmt::format("Arms: {} one longer, half of it", is_left_longer ? "left" : "right"),
            std::nullopt, arms / 2);
    }
}

std::vector<BudgetRow>
budget_rows(const Setup& setup, const Train& train, const FocusBudget& budget) {
    Waterfall waterfall;
    add_available(waterfall, setup, train, budget);
    const double given_left =
        part_as<EyepiecePair>(setup, train.choice.eyepiece).filter_shift(Eye::left).value;
    for (const LightPath& path : train.light_paths) {
        const std::string& name = setup.parts[path.part].name;
        const bool is_eyepiece = path.part == train.choice.eyepiece;
        // The seat's shift for the left eye is the observer's, not the eyepiece's.
        // The glass of its filter has a row of its own.
        const double taken = path.counted_as_stated()
                             - (is_eyepiece ? train.path(Eye::left).seat_shift - given_left : 0);
        if (is_eyepiece) {
            const char* where = taken < 0 ? ": field stop in front of the shoulder"
                                          : ": field stop behind the shoulder";
            if (taken != 0) {
                waterfall.add(taken < 0 ? BudgetEntry::gives_back : BudgetEntry::spends,
                              name + where, path.part, Millimetres{-taken});
            }
        } else if (taken != 0) {
            waterfall.add(taken > 0 ? BudgetEntry::spends : BudgetEntry::gives_back, name,
                          path.part, Millimetres{-taken});
        }
        if (const double slid = path.beyond_stated; slid != 0) {
            // What differs from the row above comes first: a narrow panel shows what stands before the colon.
            waterfall.add(slid > 0 ? BudgetEntry::spends : BudgetEntry::gives_back,
                          fmt::format("Arms {}: {} against its middle",
                                      slid > 0 ? "wider apart" : "closer together", name),
                          path.part, Millimetres{-slid});
        }
        for (const ShifterAtWork& shifter : budget.shifters) {
            if (shifter.part != path.part || shifter.gain == Millimetres{}) continue;
            waterfall.add(
                shifter.gain > Millimetres{} ? BudgetEntry::gives_back : BudgetEntry::spends,
                fmt::format("{}: {} at {:.2f}×", name,
                            shifter.gain > Millimetres{} ? "gives back" : "takes", shifter.factor),
                path.part, shifter.gain);
        }
    }
    add_eyes_and_arms(waterfall, setup, train);
    const Millimetres left = waterfall.left();
    const char* const word = left >= Millimetres{} ? "Drawtube out by"
                             : budget.reaches      ? "Left to the seats"
                                                   : "Short by";
    waterfall.add(BudgetEntry::left_over, word, std::nullopt, Millimetres{});
    return waterfall.take();
}

void judge_reach(FocusBudget& budget) {
    budget.reaches = budget.margin_in >= -exact_fit && budget.margin_out >= -exact_fit;
    budget.shortfall_is_inward = budget.margin_in < Millimetres{};
    if (!budget.reaches) budget.shortfall = -std::min(budget.margin_in, budget.margin_out);
}

// What the seats have left beside what the eyes and the arms ask of them makes up for a drawtube that stops too early.
void ask_seats(FocusBudget& budget, const SplitterHead& head, const Train& axes) {
    const Millimetres travel = head.seat_travel;
    budget.seats_lack = std::max(Millimetres{}, abs(budget.arm_difference) / 2 - travel);
    if (!budget.reaches && !budget.is_held) {
        const EyePath& left = axes.path(Eye::left);
        const Millimetres back_focus =
            budget.primary ? budget.primary->back_focus : Millimetres{axes.back_focus};
        const Millimetres missed = image_through(left, back_focus - budget.drawtube)
                                   - Millimetres{axes.served_image(Eye::left)};
        if (abs(missed) + abs(Millimetres{left.seat_shift_wanted}) <= travel + exact_fit) {
            budget.seats_take_up = missed;
            budget.reaches = true;
            budget.shortfall = {};
        }
    }
    if (budget.seats_lack > exact_fit) budget.reaches = false;
}

void focus_by_drawtube(FocusBudget& budget,
                       const Focuser& focuser,
                       Millimetres back_focus,
                       Millimetres needed) {
    budget.wanted_drawtube = back_focus - needed;
    budget.margin_in = budget.wanted_drawtube;
    budget.margin_out = budget.travel - budget.wanted_drawtube;
    judge_reach(budget);
    budget.drawtube = budget.is_held
                          ? *focuser.held_at
                          : std::clamp(budget.wanted_drawtube, Millimetres{}, budget.travel);
}

void focus_by_primary(FocusBudget& budget,
                      const CassegrainMovingMirror& mirrors,
                      const Focuser& focuser,
                      std::optional<Millimetres> distance,
                      Millimetres needed) {
    const Millimetres racked_in = focuser.held_at.value_or(Millimetres{0});
    const Millimetres racked_out = focuser.held_at.value_or(focuser.travel);
    PrimaryFocus primary;
    primary.travel_up = mirrors.travel_up;
    primary.travel_down = mirrors.travel_down;
    primary.wanted = mirrors.moved_for(needed + racked_in, distance);
    primary.moved = std::clamp(primary.wanted, -primary.travel_down, primary.travel_up);
    const MirrorFocus now = mirrors.focus_at(primary.moved, distance);
    primary.back_focus = now.back_focus;
    primary.focal_length = now.focal_length;
    primary.stated_back_focus = mirrors.back_focus;
    primary.stated_focal_length = mirrors.focal_length;
    primary.focal_length_per_mm = mirrors.focal_length_per_back_focus();
    // What the ends leave: the primary up gives more light path to spend, down and the drawtube out less.
    budget.margin_in =
        mirrors.focus_at(mirrors.travel_up, distance).back_focus - (needed + racked_in);
    budget.margin_out =
        needed + racked_out - mirrors.focus_at(-mirrors.travel_down, distance).back_focus;
    judge_reach(budget);
    budget.wanted_drawtube = primary.back_focus - needed;
    budget.drawtube = std::clamp(budget.wanted_drawtube, racked_in, racked_out);
    if (abs(budget.drawtube - racked_in) < exact_fit) budget.drawtube = racked_in;
    budget.primary = primary;
}

std::optional<Millimetres> distance_of(const Train& train) {
    if (std::isinf(train.object_distance)) return std::nullopt;
    return Millimetres{train.object_distance};
}

}  // namespace

FocusBudget solved_focus(const Setup& setup, const Train& axes) {
    const auto* focuser = find_part<Focuser>(setup);
    const auto* head = find_part<SplitterHead>(setup);
    BEAMFORK_EXPECTS(focuser != nullptr && head != nullptr);

    FocusBudget budget;
    // The drawtube serves the mean of both eyes; the seats take the rest, as far as they travel.
    const Millimetres needed =
        needed_back_focus(axes.path(Eye::left), {axes.served_image(Eye::left)}, &budget.shifters);
    budget.travel = focuser->travel;
    budget.is_held = focuser->held_at.has_value();
    budget.arm_difference = {axes.arm_difference};
    if (const auto* mirrors = find_part<CassegrainMovingMirror>(setup)) {
        focus_by_primary(budget, *mirrors, *focuser, distance_of(axes), needed);
    } else {
        focus_by_drawtube(budget, *focuser, {axes.back_focus}, needed);
    }
    budget.lens_in_glass = std::any_of(axes.lens_rooms.begin(), axes.lens_rooms.end(),
                                       [](const LensRoom& room) { return room.inside() > 0; });
    ask_seats(budget, *head, axes);
    return budget;
}

Result<void> lenses_can_work(const Setup& setup, const FocusBudget& budget) {
    for (const ShifterAtWork& shifter : budget.shifters) {
        // A positive lens farther from the stop than its focal length relays the image, and turns it.
        const bool is_before_image = shifter.image_distance > Millimetres{};
        if (std::isfinite(shifter.factor) && (shifter.factor > 0 || is_before_image)) continue;
        return fail(ErrorCode::impossible,
                    fmt::format("{}: the lens would stand behind the image or too far before it, "
                                "where it cannot work; check its position",
                                setup.parts[shifter.part].name));
    }
    return {};
}

Result<FocusBudget> solved_focus(const Setup& setup, const Choice& choice) {
    const auto axes = build_axes(setup, choice, Millimetres{0});
    if (!axes) return tl::make_unexpected(axes.error());
    const FocusBudget budget = solved_focus(setup, *axes);
    return lenses_can_work(setup, budget).map([&] { return budget; });
}

Result<FocusBudget> focus_budget(const Setup& setup, const Choice& choice) {
    const auto axes = build_axes(setup, choice, Millimetres{0});
    if (!axes) return tl::make_unexpected(axes.error());
    FocusBudget budget = solved_focus(setup, *axes);
    if (auto sound = lenses_can_work(setup, budget); !sound)
        return tl::make_unexpected(sound.error());
    budget.rows = budget_rows(setup, *axes, budget);
    return budget;
}

Result<Train> focused_train(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    return build_train(setup, choice, budget.drawtube, budget.primary_moved(),
                       budget.seats_take_up);
}

}  // namespace beamfork
