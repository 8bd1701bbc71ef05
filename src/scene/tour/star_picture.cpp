#include "scene/tour/star_picture.hpp"

#include <algorithm>
#include <cmath>

#include "scene/picture/picture_input.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "trace/bundle.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr int rays_of_a_star = 96;
// White light would drown the blue star's, of which the picture tells.
constexpr float middle_strength = 0.25F;
constexpr float edge_strength = 2;

// Where the light of the edge's star came in: what arrives in its hue, what is lost in the clipping colour. What the
// telescope's own obstruction takes is neither.
ImageDisc painted_objective(const PictureInput& input, const EdgeStar& star) {
    const Train& train = input.train();
    const int size = input.effort.disc_pixels;
    ImageDisc disc;
    disc.centre = {0, 0, static_cast<float>(train.pupil_plane)};
    disc.right = {static_cast<float>(train.objective_radius), 0, 0};
    disc.up = {0, static_cast<float>(train.objective_radius), 0};
    disc.role = ColourRole::edge_star;
    disc.size = size;
    std::vector<glm::dvec2> pupil;
    for (int row = 0; row < size; ++row) {
        for (int column = 0; column < size; ++column)
            pupil.emplace_back((column + 0.5) / size * 2 - 1, (row + 0.5) / size * 2 - 1);
    }
    const EyePath& path = train.path(star.eye);
    const BundleTracer tracer(path, primary_wavelength);
    const BundleEnds ends = tracer.trace(bundle_into(train, star.field, pupil));
    for (std::size_t i = 0; i < ends.size(); ++i) {
        const bool in_shadow =
            !ends.reached(i) && path.surfaces[ends.surface[i]].kind == SurfaceKind::obstruction;
        disc.light.push_back(ends.reached(i) ? 1.0F : 0.0F);
        disc.lost.push_back(ends.reached(i) || in_shadow ? 0.0F : 1.0F);
    }
    return disc;
}

// Which rim takes most at the edge, and how much: of the whole edge, as the captions tell it.
void name_the_rim(Frame& frame, const PictureInput& input) {
    const EyeClipping& dark = darker_at_edge(input.report);
    if (dark.rings.back().ends.empty()) return;
    const EndShare& worst = dark.rings.back().ends.front();
    const EyePath& path = input.train().path(dark.eye);
    const PlacedSurface& rim = path.surfaces.at(worst.surface);
    frame.labels.push_back(
        {glm::vec3(rim.world_from_surface.origin),
         fmt::format("{} takes {:.0f} %", end_name(input.setup, path, worst), 100 * worst.share),
         LabelRole::clipped, static_cast<int>(rim.part), -2});
}

void name_the_stars(Frame& frame, const PictureInput& input, const EdgeStar& star) {
    const Pose& stop = input.train().path(star.eye).world_from_field_stop;
    const double radius = input.report.clipping_of(star.eye).field_stop.value / 2;
    const auto name = [&](glm::dvec2 at, const char* words) {
        const Point place = stop.point_out({radius * at, 0});
        frame.labels.push_back({glm::vec3(place), words, LabelRole::note, -1, -1});
    };
    name({0, 0}, "star in the middle");
    name(star.at, "star at the edge");
}

}  // namespace

EdgeStar edge_star(const Report& report) {
    const EyeClipping& dark = darker_at_edge(report);
    const auto edge =
        std::span(dark.points).last(std::min<std::size_t>(lit_azimuth_count, dark.points.size()));
    const auto typical =
        std::min_element(edge.begin(), edge.end(), [&](const LitPoint& a, const LitPoint& b) {
            return std::abs(a.relative - dark.edge_relative)
                   < std::abs(b.relative - dark.edge_relative);
        });
    EdgeStar star{dark.eye, typical->at, {}};
    star.field = field_map(report.train, dark.eye).slope_at(dark.field_stop.value / 2 * star.at);
    return star;
}

Frame star_picture(const Setup& setup, const Report& report, const PictureEffort& effort) {
    const PictureInput input{setup, report, effort};
    const EdgeStar star = edge_star(report);
    Frame frame;
    add_bodies(frame, input);
    add_openings(frame, input);
    std::erase_if(frame.labels,
                  [](const Label& label) { return label.role == LabelRole::clipped; });
    add_star_light(frame, input,
                   {{0, 0}, ColourRole::undivided_beam, rays_of_a_star, middle_strength});
    add_star_light(frame, input,
                   {star.field, ColourRole::edge_star, rays_of_a_star, edge_strength});
    std::erase_if(frame.labels,
                  [](const Label& label) { return label.role == LabelRole::clipped; });
    frame.discs.push_back(painted_objective(input, star));
    add_part_labels(frame, input);
    name_the_rim(frame, input);
    name_the_stars(frame, input, star);
    finish_frame(frame, input);
    return frame;
}

}  // namespace beamfork
