#include "parts/splitter_head_bodies.hpp"

#include <algorithm>
#include <numbers>

namespace beamfork {

namespace {

constexpr double plate_thickness = 2;
constexpr double plate_gap = 0.5;  // between a plate and the glass before or behind it
constexpr double wall_thickness = 2;
constexpr double barrel_bore = 32;  // of the seat: takes the common 1.25 inch barrel
constexpr double rod_diameter = 5;

// A plate along y from one axis to another, round at both ends.
std::vector<glm::dvec2> stadium(double low, double high, double half_width) {
    std::vector<glm::dvec2> corners;
    constexpr int steps = 16;
    for (int i = 0; i <= 2 * steps + 1; ++i) {
        const bool is_far = i <= steps;
        const double turn = std::numbers::pi * (is_far ? i : i - 1) / steps;
        corners.emplace_back(half_width * std::cos(turn),
                             half_width * std::sin(turn) + (is_far ? high : low));
    }
    return corners;
}

void add_plate(PartLayout& layout,
               std::vector<glm::dvec2> outline,
               double hole_radius,
               const Pose& at) {
    layout.bodies.push_back({PlateBody{std::move(outline), plate_thickness, hole_radius}, at});
}

double half_plate(const SplitterHead& head) { return head.prism_width.value / 2 + 4; }

// A floor under the prisms of each arm: the left arm's under the cube, the right arm's behind it.
void add_turning_floor(PartLayout& layout, const SplitterHead& head, const StandingArm& arm) {
    const double width = head.prism_width.value;
    const double gap = arm.length - width;
    const bool is_left = arm.eye == Eye::left;
    if (!is_left && gap <= plate_thickness + 1) return;
    const double floor_at =
        arm.inside.entry_air.value + (is_left ? 0 : width + gap) - plate_thickness - plate_gap;
    add_plate(layout, stadium(0, arm.length, half_plate(head)),
              is_left ? head.entry_clear.value / 2 : width / 2,
              arm.frame * translation(0, 0, floor_at));
}

// One floor for the cube, as long as the head is at its widest, and two rods from end to end.
void add_rails(PartLayout& layout, const SplitterHead& head, const StandingArm& arm) {
    const double reach = head.arm_offset.value;
    const double top = arm.inside.entry_air.value + 2 * head.prism_width.value;
    add_plate(layout, stadium(-reach, reach, half_plate(head)), head.entry_clear.value / 2,
              arm.frame
                  * translation(0, 0, arm.inside.entry_air.value - plate_thickness - plate_gap));
    const double end = reach + head.prism_width.value / 2 + rod_diameter;
    for (const double side : {-1.0, 1.0}) {
        const double aside = side * (half_plate(head) + rod_diameter / 2);
        const Pose along =
            translation(aside, -end, top) * rotation_about_x(to_radians(Degrees{-90}));
        layout.bodies.push_back(
            tube_body(arm.frame * along, 2 * end, rod_diameter / 2, rod_diameter / 4));
    }
}

// The plate that carries one arm's prism and seat along the rods, open for the light. Its inner edge stays
// clear of the other one's where the head is narrowest.
void add_carriage(PartLayout& layout, const SplitterHead& head, const StandingArm& arm) {
    const double half = half_plate(head) + rod_diameter;
    const double inner = std::max(0.0, head.narrowest().value / 2 - plate_gap);
    const double outer = head.prism_width.value / 2 + rod_diameter;
    const double top = arm.inside.entry_air.value + 2 * head.prism_width.value + rod_diameter / 2;
    add_plate(layout, {{half, -inner}, {half, outer}, {-half, outer}, {-half, -inner}},
              std::min(head.exit_clear.value / 2, inner),
              arm.frame * translation(0, arm.length, top));
}

void add_nose(PartLayout& layout, const SplitterHead& head, const StandingArm& arm) {
    const double clear = head.entry_clear.value;
    const double nose = head.nose_length.value + arm.inside.entry_air.value - 2;
    if (nose > 1) {
        layout.bodies.push_back(
            tube_body(translation(0, 0, -head.nose_length.value), nose, clear, wall_thickness));
    }
    layout.bodies.push_back(ring_body(Pose{}, clear, clear + 14));
}

}  // namespace

void add_housing(PartLayout& layout, const SplitterHead& head, const StandingArm& arm) {
    const double exit_clear = head.exit_clear.value;
    const Pose last_face = layout.part_from_exit * translation(0, 0, -arm.inside.seat_height.value);
    layout.bodies.push_back(tube_body(last_face * translation(0, 0, 3),
                                      arm.inside.seat_height.value - 3,
                                      std::max(exit_clear, barrel_bore), wall_thickness));
    layout.bodies.push_back(
        ring_body(last_face * translation(0, 0, 1), exit_clear, exit_clear + 10));
    if (head.is_sliding()) {
        add_carriage(layout, head, arm);
        if (arm.eye == Eye::left) add_rails(layout, head, arm);
    } else {
        add_turning_floor(layout, head, arm);
    }
    if (arm.eye == Eye::left) add_nose(layout, head, arm);
}

}  // namespace beamfork
