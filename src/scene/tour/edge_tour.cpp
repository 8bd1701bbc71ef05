// Why the edge goes dark: two stars alone, and what becomes of the light of the one at the edge.
#include "document/tour_lit.hpp"
#include "scene/tour/tour_makers.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

constexpr double as_bright_as_middle = 0.99;  // common practice, no source: nobody sees 1 %

TourStep two_stars() {
    return showing({TourShow::stars},
                   {StandardView::overview,
                    "Two stars alone: a white one in the middle of the field, a blue one at its "
                    "edge. Each lights the whole front opening; the blue light comes in slantwise.",
                    "Follow the blue light from the front to the eyepieces: it leaves the axis "
                    "where the white light stays on it."});
}

// What the room guesses where there is something to be guessed.
TourStep edge_question(double light, TourStep step) {
    constexpr double dark_enough = 0.9;
    if (light > dark_enough) return step;
    const bool has_room_above = light < 0.7;
    return asking_number({"How much of the blue star's light arrives?", "{edge.light}", 100 * light,
                          "\u00A0%",
                          has_room_above ? std::array{0.5, 1.0, 1.4} : std::array{0.4, 0.7, 1.0}},
                         std::move(step));
}

TourStep at_the_rim(const Setup& setup, const Report& report, const EyeClipping& dark) {
    const PlacedSurface& rim =
        report.train.path(dark.eye).surfaces.at(dark.rings.back().ends.front().surface);
    constexpr double narrowest_mm = 12;  // no nearer than this, whatever the opening
    const double radius = std::max(narrowest_mm, inner_radius(rim.aperture));
    return seen_from(
        close_to(rim.world_from_surface.origin, radius),
        showing({TourShow::stars},
                lit_by({lit_word_of(setup.parts[rim.part])},
                       edge_question(
                           dark.edge_relative,
                           {StandardView::rear,
                            "The orange rays of the blue star end at a rim; {edge.rim} takes most. "
                            "At the edge of the field {edge.light} of the light arrives.",
                            "Crosses mark rays that end at a rim, rings light that leaks out of a "
                            "prism's face."}))));
}

TourStep at_the_objective(const Report& report) {
    const double radius = report.train.objective_radius;
    TourCamera camera = close_to({0, 0, report.train.pupil_plane}, radius);
    camera.distance_mm = 6 * radius;
    camera.yaw_deg = -72;
    return seen_from(
        camera,
        showing({TourShow::stars},
                lit_by({the_telescope},
                       {StandardView::sky,
                        "The front opening, painted by what becomes of the blue "
                        "star's light: blue arrives in the darker eye, orange is lost "
                        "on the way. For that star the telescope is no larger than the blue part.",
                        "The middle of the field has nearly the whole of it where no rim "
                        "is narrower than the beam."})));
}

TourStep both_fields(bool is_dark) {
    return showing(
        {TourShow::fields},
        lit_by({the_eyepieces},
               {StandardView::eyes,
                is_dark ? "Both fields as bright as they are: full light in the middle, "
                          "{edge.light} of it at the edge of the darker one."
                        : "Both fields as bright as they are: {edge.light} of the light at the "
                          "edge. No rim takes a share that an eye would notice.",
                "Wider prisms, a slimmer cone or a smaller field stop all help."}));
}

}  // namespace

Tour why_the_edge_goes_dark(const Setup& setup, const Report& report) {
    const EyeClipping& dark = darker_at_edge(report);
    const bool is_dark =
        dark.edge_relative < as_bright_as_middle && !dark.rings.back().ends.empty();
    Tour tour{"why-the-edge-goes-dark",
              is_dark ? "Why the edge goes dark" : "Why the edge stays bright",
              {two_stars()}};
    if (is_dark) {
        tour.steps.push_back(at_the_rim(setup, report, dark));
        tour.steps.push_back(at_the_objective(report));
    }
    tour.steps.push_back(both_fields(is_dark));
    return tour;
}

}  // namespace beamfork
