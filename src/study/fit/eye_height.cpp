#include "study/fit/eye_height.hpp"

#include <algorithm>
#include <cmath>

#include "parts/balance.hpp"

namespace beamfork {

namespace {

// Of a vector that is given for a level tube, when the tube points that high: its front goes up, its rear down.
double upward(const Direction& level, Degrees altitude) {
    const double angle = to_radians(altitude).value;
    return level.y * std::cos(angle) - level.z * std::sin(angle);
}

}  // namespace

EyeHeight eye_height(const Setup& setup, const Train& train) {
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const std::size_t focuser = parts_with_role(setup, Role::focuser).front();
    const auto placed = std::find_if(train.placed.begin(), train.placed.end(),
                                     [&](const PlacedPart& one) { return one.part == focuser; });
    BEAMFORK_EXPECTS(placed != train.placed.end());
    EyeHeight result;
    const auto balance = balance_of(setup.parts[telescope].body);
    result.pivot_is_stated = balance && balance->balance_point;
    result.pivot = result.pivot_is_stated ? *balance->balance_point
                                          : Millimetres{placed->world_from_part.origin.z / 2};
    const Pose& left = train.path(Eye::left).world_from_field_stop;
    const Pose& right = train.path(Eye::right).world_from_field_stop;
    const Point eyes = (left.origin + right.origin) / 2.0 - Point{0, 0, result.pivot.value};
    const Direction gaze = -glm::normalize(left.z() + right.z());
    result.lowest = result.highest = Millimetres{upward(eyes, {0})};
    for (int degree = 0; degree <= 90; ++degree) {
        const Degrees altitude{static_cast<double>(degree)};
        const Millimetres height{upward(eyes, altitude)};
        result.lowest = std::min(result.lowest, height);
        result.highest = std::max(result.highest, height);
        if (degree % 30 != 0) continue;
        const double sine = std::clamp(upward(gaze, altitude), -1.0, 1.0);
        result.places.push_back({altitude, height, to_degrees(Radians{std::asin(sine)})});
    }
    return result;
}

}  // namespace beamfork
