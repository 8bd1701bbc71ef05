#include "scene/tour/colour_foci.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "scene/picture/picture_input.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double room_mm = 36;  // for the distance between the outermost foci

// The plane of the drawing: along the light, and away from the telescope.
struct Sheet {
    Point middle{0.0};  ///< the focus of green light
    Direction along{0, 0, 1};
    Direction across{0, 1, 0};

    [[nodiscard]] Point at(double forward, double aside) const {
        return middle + forward * along + aside * across;
    }
};

Sheet beside_left_eye(const PictureInput& input) {
    const Pose& left = input.train().path(Eye::left).world_from_field_stop;
    const Pose& right = input.train().path(Eye::right).world_from_field_stop;
    const Direction apart = left.origin - right.origin;
    const Direction outward = glm::normalize(apart - glm::dot(apart, left.z()) * left.z());
    constexpr double clear_of_eyepiece_mm = 75;
    return {left.origin + clear_of_eyepiece_mm * outward, left.z(), outward};
}

struct ColourFocus {
    ColourRole role;
    const char* name;
    double behind_mm;  ///< the focus of green, along the light
};

std::array<ColourFocus, 3> foci_of(const EyeImage& image) {
    return {{{ColourRole::blue_light, "blue", image.blue_shift.value},
             {ColourRole::green_light, "green", 0},
             {ColourRole::red_light, "red", image.red_shift.value}}};
}

void draw_line(Frame& frame, const Point& from, const Point& to, ColourRole role, float width) {
    frame.lines.push_back({glm::vec3(from), glm::vec3(to), role, width, false, true, -1, true});
}

// Rays of one colour from the left of the drawing through their focus to its right.
void draw_rays(Frame& frame, const Sheet& sheet, double focus, double slope, ColourRole role) {
    constexpr double reach_mm = 46;
    for (const double share : {-1.0, -0.5, 0.5, 1.0}) {
        const double steep = share * slope;
        draw_line(frame, sheet.at(-reach_mm, steep * (reach_mm + focus)),
                  sheet.at(reach_mm, steep * (focus - reach_mm)), role, 1.8F);
    }
    frame.marks.push_back({glm::vec3(sheet.at(focus, 0)), role, 9, MarkShape::dot, true, false});
}

// What a perfect image would forgive: two lines across the light.
void draw_band(Frame& frame, const Sheet& sheet, double half) {
    constexpr double half_wide_mm = 9;
    for (const double side : {-half, half})
        draw_line(frame, sheet.at(side, -half_wide_mm), sheet.at(side, half_wide_mm),
                  ColourRole::good, 2.5F);
}

void add_colour_foci(Frame& frame, const PictureInput& input) {
    const EyeImage& image = input.report.image_quality[0];
    const double scale = colour_foci_scale(input.report);
    const Sheet sheet = beside_left_eye(input);
    constexpr double slope = 0.32;  // drawn wider than the cone is, so that crossings can be seen
    for (const ColourFocus& colour : foci_of(image)) {
        const double focus = scale * colour.behind_mm;
        draw_rays(frame, sheet, focus, slope, colour.role);
        frame.labels.push_back(
            {glm::vec3(sheet.at(focus, 0)), colour.name, LabelRole::note, -1, 0});
    }
    draw_band(frame, sheet, scale * image.depth_of_focus.value);
    frame.labels.push_back({glm::vec3(sheet.at(-46, 0)),
                            fmt::format("{:.0f} times as long as it is", scale), LabelRole::note,
                            -1, -1});
    frame.labels.push_back({glm::vec3(sheet.at(scale * image.depth_of_focus.value, 9)),
                            "sharp between these lines", LabelRole::note, -1, 0});
}

}  // namespace

int colour_foci_scale(const Report& report) {
    const EyeImage& image = report.image_quality[0];
    const auto [low, high] = std::minmax({0.0, image.blue_shift.value, image.red_shift.value});
    const double span = std::max({high - low, 2 * image.depth_of_focus.value, 1e-3});
    const double wanted = room_mm / span;
    const double ten = std::pow(10.0, std::floor(std::log10(wanted)));
    const double first = wanted / ten;
    return std::max(1, static_cast<int>(ten * (first >= 5 ? 5 : first >= 2 ? 2 : 1)));
}

Frame colour_picture(const Setup& setup, const Report& report, const PictureEffort& effort) {
    const PictureInput input{setup, report, effort};
    Frame frame;
    add_bodies(frame, input);
    add_light(frame, input);
    std::erase_if(frame.labels,
                  [](const Label& label) { return label.role == LabelRole::clipped; });
    add_part_labels(frame, input);
    add_colour_foci(frame, input);
    finish_frame(frame, input);
    const Sheet sheet = beside_left_eye(input);
    for (const double forward : {-50.0, 50.0}) {
        for (const double aside : {-18.0, 18.0}) {
            const glm::vec3 corner(sheet.at(forward, aside));
            frame.rear_bounds.low = glm::min(frame.rear_bounds.low, corner);
            frame.rear_bounds.high = glm::max(frame.rear_bounds.high, corner);
        }
    }
    return frame;
}

}  // namespace beamfork
