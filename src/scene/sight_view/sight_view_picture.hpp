// Pictures of what each eye sees, computed from traced rays: place and orientation by the chief rays, size by
// the magnification, dimming by the clipped light, blur by the spread of each colour with the telescope's
// diffraction, a wrong focus as the disc that it really makes. Slow (tens of ms): not while drawing a frame.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "scene/sight_view/sight_view_subject.hpp"
#include "study/sight_view/sight_view.hpp"

namespace beamfork {

enum class SightLayout {
    left_and_right,  ///< two pictures side by side
    merged,          ///< one: the mean of both eyes
    one_and_two,     ///< one eye at the same telescope without a head, beside the merged picture
};

struct SightRequest {
    SightScene scene;
    SightLayout layout = SightLayout::left_and_right;
    double closer = 1;  ///< 1 shows the whole field; 10 the middle tenth of it, ten times larger
    int pixels = 280;   ///< height, and width of each picture
    bool operator==(const SightRequest&) const = default;
};

/// Everything a picture needs: left eye, right eye, one eye at the bare telescope.
using Sights = std::array<EyeSight, 3>;
Sights sights_of(const Setup& setup, const Report& report, SightDetail detail = SightDetail::whole);

/// Linear light, rows from the top; black outside the field stop.
struct SightLight {
    int pixels = 0;
    std::vector<glm::vec3> light;  ///< pixels squared
    [[nodiscard]] const glm::vec3& at(int x, int y) const {
        return light[static_cast<std::size_t>(y * pixels + x)];
    }
};

/// A picture of the whole field is wider than the field by this, so that the stop's edge is seen.
constexpr double field_margin = 1.03;

/// What all pictures of one request have in common, so that they can be compared.
struct SightFrame {
    double shown = 1;       ///< apparent width of a picture, radians
    double sky_radius = 1;  ///< stars are scattered within it, a tangent
    double faintest = 6;    ///< magnitude down to which there are any
    double tick = 1;        ///< of the board's scale, a tangent
    int pixels = 280;
};
SightFrame frame_of(const Sights& sights, const SightRequest& request);
SightLight draw_light(const EyeSight& sight, const SightScene& scene, const SightFrame& frame);
SightLight mean_of(const SightLight& a, const SightLight& b);

/// sRGB with alpha, rows from the top; the pictures of a layout side by side, `pixels` high.
struct SightImage {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;
};

/// The brightest place of all pictures shown is white; points of light are drawn by the root of their
/// light, as the eye judges them (S. S. Stevens, Psychological Review 64, 153-181, 1957, from memory).
SightImage draw_sight(const Sights& sights, const SightRequest& request);

/// How close one must go to see this subject well: planet and double star are tiny in the whole field.
double fitting_closeness(const Sights& sights, const SightScene& scene);

}  // namespace beamfork
