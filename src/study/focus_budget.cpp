#include "study/focus_budget.hpp"

#include <algorithm>
#include <cmath>

#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

double FocusBudget::factor() const {
    double product = 1;
    for (const ShifterAtWork& shifter : shifters)
        product *= shifter.factor;
    return product;
}

double
needed_back_focus(const EyePath& path, double wanted_image, std::vector<ShifterAtWork>* shifters) {
    double distance =
        wanted_image;  // from the present place on the axis to the image, along the light
    for (auto step = path.steps.rbegin(); step != path.steps.rend(); ++step) {
        if (step->lens_focal_length != 0) {
            const Millimetres focal{step->lens_focal_length};
            const double factor = shifter_factor(focal, {distance});
            if (shifters)
                shifters->push_back({step->part, distance, factor, distance - distance / factor});
            distance /= factor;
        }
        distance += step->reduced();
    }
    if (shifters) std::reverse(shifters->begin(), shifters->end());
    return distance;
}

double image_behind_stop(const Train& train, Eye eye) {
    double distance = train.back_focus - train.drawtube.value;
    for (const AxialStep& step : train.path(eye).steps) {
        distance -= step.reduced();
        if (step.lens_focal_length != 0) distance = 1 / (1 / distance + 1 / step.lens_focal_length);
    }
    return distance;
}

Point point_near_stop(const EyePath& path, double reduced_behind_stop) {
    const Pose& stop = path.world_from_field_stop;
    if (reduced_behind_stop >= 0) return stop.point_out({0, 0, reduced_behind_stop});
    double remaining = -reduced_behind_stop;
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
    void add(BudgetEntry entry, std::string label, std::optional<std::size_t> part, double change) {
        left_ += change;
        rows_.push_back({entry, std::move(label), part, change, left_});
    }
    [[nodiscard]] double left() const { return left_; }
    [[nodiscard]] std::vector<BudgetRow> take() { return std::move(rows_); }

private:
    std::vector<BudgetRow> rows_;
    double left_ = 0;
};

void add_available(Waterfall& waterfall, const Setup& setup, const Train& train) {
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const double at_infinity = telescope_of(setup).back_focus.value;
    waterfall.add(BudgetEntry::available, setup.parts[telescope].name + ": back focus", telescope,
                  at_infinity);
    if (train.back_focus != at_infinity) {
        waterfall.add(BudgetEntry::gives_back,
                      setup.parts[train.choice.target].name + ": near target focuses farther out",
                      train.choice.target, train.back_focus - at_infinity);
    }
}

std::vector<BudgetRow>
budget_rows(const Setup& setup, const Train& train, const FocusBudget& budget) {
    Waterfall waterfall;
    add_available(waterfall, setup, train);
    for (const LightPath& path : train.light_paths) {
        const std::string& name = setup.parts[path.part].name;
        const bool is_eyepiece = path.part == train.choice.eyepiece;
        // The seat's shift for the left eye is the observer's, not the eyepiece's.
        const double taken = path.counted() - (is_eyepiece ? train.path(Eye::left).seat_shift : 0);
        if (is_eyepiece) {
            const char* where = taken < 0 ? ": field stop in front of the shoulder"
                                          : ": field stop behind the shoulder";
            if (taken != 0) {
                waterfall.add(taken < 0 ? BudgetEntry::gives_back : BudgetEntry::spends,
                              name + where, path.part, -taken);
            }
        } else if (taken != 0) {
            waterfall.add(taken > 0 ? BudgetEntry::spends : BudgetEntry::gives_back, name,
                          path.part, -taken);
        }
        for (const ShifterAtWork& shifter : budget.shifters) {
            if (shifter.part != path.part) continue;
            waterfall.add(shifter.gain > 0 ? BudgetEntry::gives_back : BudgetEntry::spends,
                          fmt::format("{}: {} at {:.2f}×", name,
                                      shifter.gain > 0 ? "gives back" : "takes", shifter.factor),
                          path.part, shifter.gain);
        }
    }
    if (train.focus_offset != 0) {
        waterfall.add(BudgetEntry::observer,
                      setup.parts[train.choice.observer].name + ": eyes' correction",
                      train.choice.observer, -train.focus_offset);
    }
    const double left = waterfall.left();
    waterfall.add(BudgetEntry::left_over, left < 0 ? "Short by" : "Drawtube out by", std::nullopt,
                  0);
    return waterfall.take();
}

}  // namespace

Result<FocusBudget> focus_budget(const Setup& setup, const Choice& choice) {
    const auto train = build_train(setup, choice, Millimetres{0});
    if (!train) return tl::make_unexpected(train.error());
    const auto* focuser = find_part<Focuser>(setup);
    BEAMFORK_EXPECTS(focuser != nullptr);
    const EyePath& left = train->path(Eye::left);

    FocusBudget budget;
    // The drawtube serves the mean of both eyes; the seats take the rest, as far as they travel.
    const double needed =
        needed_back_focus(left, train->focus_offset - left.seat_shift, &budget.shifters);
    budget.travel = focuser->travel.value;
    budget.wanted_drawtube = train->back_focus - needed;
    budget.margin_in = budget.wanted_drawtube;
    budget.margin_out = budget.travel - budget.wanted_drawtube;
    constexpr double rounding = 1e-9;  // an exact fit still reaches
    budget.reaches = budget.margin_in >= -rounding && budget.margin_out >= -rounding;
    budget.shortfall_is_inward = budget.margin_in < 0;
    if (!budget.reaches) budget.shortfall = -std::min(budget.margin_in, budget.margin_out);
    budget.is_held = focuser->held_at.has_value();
    budget.drawtube = budget.is_held ? focuser->held_at->value
                                     : std::clamp(budget.wanted_drawtube, 0.0, budget.travel);
    for (const LightPath& path : train->light_paths) {
        if (path.part != choice.eyepiece)
            budget.arm_difference += path.derived_left - path.derived_right;
    }
    budget.rows = budget_rows(setup, *train, budget);
    return budget;
}

}  // namespace beamfork
