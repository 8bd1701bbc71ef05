#include "scene/handles/handle.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

const PlacedPart* find_placed(const Report& report, std::size_t part, Eye eye) {
    for (const PlacedPart& placed : report.train.placed) {
        if (placed.part == part && placed.eye == eye) return &placed;
    }
    return nullptr;
}

// Of the body round the part's opening.
double outer_radius(const Part& part) {
    double opening = 0;
    double wall = 1;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        if (field.by_hand) wall = field.by_hand->wall;
        if (field.grows_with_openings)
            opening = std::get<double>(*field_value(part.body, field.key));
    }
    return opening / 2 + wall;
}

// Both arms of the head move, each by half.
std::vector<Handle>
arm_handles(const Setup& setup, const Report& report, const MovableLength& length) {
    const Train& train = report.train;
    const auto heads = parts_with_role(setup, Role::splitter);
    const PlacedPart* head =
        heads.empty() ? nullptr : find_placed(report, heads.front(), Eye::left);
    if (head == nullptr) return {};
    const auto& eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    std::array<Point, 2> seats;
    for (const Eye eye : both_eyes) {
        const PlacedPart* placed = find_placed(report, train.choice.eyepiece, eye);
        if (placed == nullptr) return {};
        seats[side_of(eye)] = placed->world_from_part.origin;
    }
    const Point middle = (seats[0] + seats[1]) / 2.0;
    std::vector<Handle> handles;
    for (const Point& seat : seats) {
        Handle handle;
        handle.length = length;
        handle.line = {middle, glm::normalize(seat - middle)};
        handle.per_value = 0.5;
        handle.radius = eyepiece.outer_diameter.value / 2;
        handle.stays = head->world_from_part.origin;
        handle.knob = KnobPlace::ahead;
        handles.push_back(std::move(handle));
    }
    return handles;
}

glm::vec2 unit_or(glm::vec2 vector, glm::vec2 otherwise) {
    const float length = glm::length(vector);
    return length > 1e-3F ? vector / length : otherwise;
}

// Away from where the light goes on behind a fold.
Direction free_side(const Report& report, const Direction& line) {
    const Direction on = report.train.path(Eye::left).world_from_field_stop.z();
    return std::abs(glm::dot(on, line)) < 0.9 ? -on : Direction{0.0};
}

// Square to the line and to the line of sight, on the free side, else upward on screen; of an upright line to the left.
Direction beside_line(const Handle& handle, const Point& at, const Camera& camera) {
    const Direction& line = handle.line.direction;
    const CameraAxes axes = camera_axes(camera);
    const Direction square = glm::cross(line, at - Point(eye_position(camera)));
    if (glm::length(square) < 1e-9) return Direction(axes.up);
    const Direction side = glm::normalize(square);
    const double free = glm::dot(side, handle.free_side);
    if (std::abs(free) > 0.2) return free > 0 ? side : -side;
    const double up = glm::dot(side, Direction(axes.up));
    const double right = glm::dot(side, Direction(axes.right));
    const bool is_upward = std::abs(up) > 0.2 ? up > 0 : right < 0;
    return is_upward ? side : -side;
}

}  // namespace

std::vector<Handle> handles_of(const Setup& setup, const Report& report, std::size_t part) {
    auto length = movable_length(setup, report, part);
    if (!length) return {};
    if (role_of(setup.parts[length->part]) == Role::observer)
        return arm_handles(setup, report, *length);
    const PlacedPart* placed = find_placed(report, part, Eye::left);
    if (placed == nullptr) return {};
    Handle handle;
    handle.length = *std::move(length);
    handle.line = {placed->world_from_part.origin, placed->world_from_part.z()};
    handle.radius = outer_radius(setup.parts[part]);
    handle.stays = placed->world_from_part.origin;
    handle.free_side = free_side(report, handle.line.direction);
    return {handle};
}

std::optional<HandleView>
view_of(const Handle& handle, const Camera& camera, Viewport viewport, float stalk_px) {
    const Point place = handle.place();
    const Direction& line = handle.line.direction;
    const auto at = project(camera, glm::vec3(place), viewport);
    const auto ahead = project(camera, glm::vec3(place + line), viewport);
    if (!at || !ahead) return std::nullopt;
    if (at->x < 0 || at->y < 0 || at->x > viewport.width || at->y > viewport.height)
        return std::nullopt;
    HandleView view;
    view.place = *at;
    view.goes_by_height = points_at_viewer(line, place, camera);
    view.along = unit_or(*ahead - *at, {1, 0});
    if (view.goes_by_height)
        view.along = {0, glm::dot(line, place - Point(eye_position(camera))) > 0 ? -1 : 1};
    const Direction out =
        handle.knob == KnobPlace::ahead ? line : beside_line(handle, place, camera);
    const auto rim = project(camera, glm::vec3(place + handle.radius * out), viewport);
    if (!rim) return std::nullopt;
    view.rim = *rim;
    const glm::vec2 most{std::max(stalk_px, viewport.width - stalk_px),
                         std::max(stalk_px, viewport.height - stalk_px)};
    view.knob =
        glm::clamp(*rim + stalk_px * unit_or(*rim - *at, {0, -1}), glm::vec2(stalk_px), most);
    return view;
}

}  // namespace beamfork
