// A slim scale along the drawtube: how far it can travel, where its rear face stands, and where focus wants it.
#include <algorithm>
#include <cmath>

#include "parts/focuser.hpp"
#include "scene/picture/picture_input.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

const PlacedPart* placed_focuser(const PictureInput& input) {
    for (const PlacedPart& placed : input.train().placed) {
        if (role_of(input.setup.parts[placed.part]) == Role::focuser) return &placed;
    }
    return nullptr;
}

// The side of the drawtube away from where the diagonal turns the light.
Direction free_side(const PictureInput& input, const Pose& rear_face) {
    const Direction z = rear_face.z();
    const Direction up = input.train().path(Eye::left).world_from_field_stop.z();
    const Direction aside = -(up - glm::dot(up, z) * z);
    return glm::length(aside) > 0.2 ? glm::normalize(aside) : -rear_face.y();
}

class ScaleDrawer {
public:
    ScaleDrawer(
        Frame& frame, const Pose& rear_face, const Direction& aside, double offset, int part)
        : frame_(frame),
          part_(part),
          zero_(rear_face.origin + offset * aside),
          along_(rear_face.z()),
          aside_(aside) {}

    [[nodiscard]] Point at(double extension, double away = 0) const {
        return zero_ + extension * along_ + away * aside_;
    }
    void
    line(const Point& from, const Point& to, ColourRole role, float width, bool dashed = false) {
        frame_.lines.push_back({glm::vec3(from), glm::vec3(to), role, width, dashed, false, part_,
                                role != ColourRole::dimension});
    }
    void tick(double extension, double low, double high, ColourRole role, float width) {
        line(at(extension, low), at(extension, high), role, width);
    }
    void mark(double extension, ColourRole role, MarkShape shape, float size) {
        frame_.marks.push_back({glm::vec3(at(extension)), role, size, shape, false, false});
    }
    void tell(double extension, std::string text) {
        constexpr int priority = 12;
        frame_.labels.push_back(
            {glm::vec3(at(extension)), std::move(text), LabelRole::note, part_, priority});
    }

private:
    Frame& frame_;
    int part_;
    Point zero_;
    Direction along_;
    Direction aside_;
};

void draw_wanted(ScaleDrawer& scale, const FocusBudget& budget) {
    const double stands = budget.drawtube.value;
    const double travel = budget.travel.value;
    if (abs(budget.wanted_drawtube - budget.drawtube) < Millimetres{0.05}) {
        scale.mark(stands, ColourRole::good, MarkShape::diamond, 10);
        scale.tell(stands, fmt::format("{:.1f} of {:.0f} mm out", stands, travel));
        return;
    }
    scale.mark(stands, ColourRole::dimension, MarkShape::dot, 7);
    if (!budget.reaches) {  // the way that is missing is drawn once: at the image (focus_gap.cpp)
        scale.tell(stands, fmt::format("fully {}, {:.0f} mm travel",
                                       budget.shortfall_is_inward ? "in" : "out", travel));
        return;
    }
    const double wanted = budget.wanted_drawtube.value;
    scale.line(scale.at(stands), scale.at(wanted), ColourRole::good, 2.0F, true);
    scale.mark(wanted, ColourRole::good, MarkShape::diamond, 10);
    scale.tell(wanted, budget.seats_take_up != Millimetres{}
                           ? fmt::format("{:.1f} mm out, the seats take up the rest", stands)
                           : fmt::format("{:.1f} mm out, focus at {:.1f} of {:.0f} mm", stands,
                                         wanted, travel));
}

// A moving mirror focuses instead of the drawtube: told below the mirror.
void label_primary(Frame& frame, const PictureInput& input, const PrimaryFocus& primary) {
    const Train& train = input.train();
    const Point rim{0, -train.objective_radius, train.pupil_plane};
    const bool reaches = input.report.budget.reaches;
    std::string text = fmt::format("main mirror {:.1f} mm {}", abs(primary.moved).value,
                                   primary.moved < Millimetres{} ? "down" : "up");
    if (!reaches) text += ": its end";
    if (input.report.budget.drawtube_helps())
        text += fmt::format(", drawtube {:.1f} mm out", input.report.budget.drawtube.value);
    const auto telescope = parts_with_role(input.setup, Role::telescope).front();
    frame.labels.push_back(
        {glm::vec3(rim), std::move(text), LabelRole::note, static_cast<int>(telescope), 12});
}

}  // namespace

void add_drawtube_scale(Frame& frame, const PictureInput& input) {
    if (const auto& primary = input.report.budget.primary)
        return label_primary(frame, input, *primary);
    const PlacedPart* placed = placed_focuser(input);
    const auto* focuser = find_part<Focuser>(input.setup);
    if (placed == nullptr || focuser == nullptr) return;
    const FocusBudget& budget = input.report.budget;
    const double offset = focuser->drawtube_diameter.value / 2 + 16;
    ScaleDrawer scale(frame, placed->world_from_part, free_side(input, placed->world_from_part),
                      offset, static_cast<int>(placed->part));
    scale.line(scale.at(0), scale.at(budget.travel.value), ColourRole::dimension, 1.5F);
    scale.tick(0, -4, 4, ColourRole::dimension, 1.8F);
    const int tens =
        static_cast<int>(std::ceil(budget.travel.value / 10)) - 1;  // inside of both ends
    for (int ten = 1; ten <= tens; ++ten)
        scale.tick(10.0 * ten, 0, 2.5, ColourRole::dimension, 1.0F);
    scale.tick(budget.travel.value, -4, 4, ColourRole::dimension, 1.8F);
    draw_wanted(scale, budget);
}

}  // namespace beamfork
