#include "scene/tour/built_in_tours.hpp"

#include <algorithm>

#include "parts/splitter_head.hpp"
#include "scene/tour/tour_makers.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

// What dividing the light costs: against one eye at the same telescope without the head.
TourStep what_half_means() {
    return showing(
        {TourShow::fields},
        lit_by({the_eyepieces},
               {StandardView::eyes,
                "What the division means: each eye sees stars {eye.change} deep than one eye would "
                "without the head, both eyes together {eyes.change}.",
                "Two eyes see a faint thing better than one by the square root of 2 to 1.6, as "
                "published; told here by the root of 2. Five magnitudes are a hundredfold of "
                "light."}));
}

Tour one_beam_becomes_two(const Setup& setup) {
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    const bool slides = part_as<SplitterHead>(setup, head).is_sliding();
    return {
        "one-beam-becomes-two",
        "One beam becomes two",
        {{StandardView::overview,
          "One telescope of {telescope.aperture}, two eyes. Everything each eye will see comes "
          "through this one opening.",
          "Follow the light from left to right with the pointer before you say any number."},
         showing({TourShow::motion},
                 lit_by({the_head},
                        {StandardView::rear,
                         "A half-mirror inside the cube divides the light: {head.left} of what it "
                         "does not lose turns to the left eye, {head.right} goes on to the right.",
                         "Each eye gets the whole picture, only dimmer: the light is divided, not "
                         "the field. The packets of light are slowed; M makes the beam steady and "
                         "sets them going again."})),
         lit_by(
             {the_head, the_eyepieces},
             {StandardView::eyes,
              slides
                  ? "Prisms carry both beams to the eyes. The outer prisms slide to set the "
                    "distance between the eyes, and that changes the light path."
                  : "Prisms carry both beams to the eyes. Both arms turn about the hinge, so that "
                    "the eyes' distance is set without a change of focus.",
              "Set the distance first, focus after."}),
         what_half_means(),
         lit_by(
             {the_head, the_eyepieces},
             asking({"Which eye gets more light?",
                     {"The left eye", "The right eye", "Both alike"},
                     0,
                     "{eye.brighter}"},
                    {StandardView::overview,
                     "Of the light that falls on the telescope, {eye.left} enters the left eye and "
                     "{eye.right} the right, at {sight.magnification}.",
                     "Never at the Sun without a certified solar filter over the whole front "
                     "opening."}))}};
}

}  // namespace

std::vector<Tour> all_tours(const Document& document, const Report& report) {
    std::vector<Tour> tours = document.tours;
    for (Tour& one : built_in_tours(document.setup, report)) {
        const bool is_taken = std::any_of(document.tours.begin(), document.tours.end(),
                                          [&](const Tour& own) { return own.name == one.name; });
        if (!is_taken) tours.push_back(std::move(one));
    }
    return tours;
}

std::vector<Tour> built_in_tours(const Setup& setup, const Report& report) {
    return {one_beam_becomes_two(setup), why_it_will_not_focus(setup, report),
            what_a_shifter_does(setup, report), why_the_edge_goes_dark(setup, report),
            what_glass_does(setup, report)};
}

}  // namespace beamfork
