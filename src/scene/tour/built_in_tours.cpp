#include "scene/tour/built_in_tours.hpp"

#include <algorithm>

#include "document/tour_lit.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

constexpr double as_bright_as_middle = 0.99;  // common practice, no source: nobody sees 1 %

// What a step lights, as document/tour_lit.hpp has it.
constexpr const char* the_telescope = "telescope";
constexpr const char* the_focuser = "focuser";
constexpr const char* the_chain = "chain";
constexpr const char* the_head = "splitter_head";
constexpr const char* the_eyepieces = "eyepiece_pair";
constexpr const char* the_shifter = "shifter";

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

// A moving mirror focuses whatever holds the drawtube.
bool drawtube_decides(const FocusBudget& budget) { return budget.is_held && !budget.primary; }

TourStep told_verdict(const FocusBudget& budget) {
    if (drawtube_decides(budget)) {
        return {StandardView::rear,
                "Here the drawtube is held at {focus.drawtube}; focus wants it at {focus.wanted}.",
                "Free the drawtube in the focuser's properties to see whether it can go there."};
    }
    if (budget.seats_take_up != Millimetres{}) {
        return {StandardView::rear,
                "At the end of the focus travel a hair is missing; " + seats_words(budget)
                    + " in their seats make it up.",
                "The seats are meant for the eyes: little is left of them then."};
    }
    if (budget.reaches) {
        return {
            StandardView::rear,
            "This setup reaches focus, with {focus.margin_in} left inward and {focus.margin_out} "
            "outward. Longer parts use up the first, shorter parts the second.",
            "5 to 10 mm should be left either way (common practice)."};
    }
    if (budget.shortfall == Millimetres{}) {
        return {StandardView::rear,
                "One eye at a time comes to focus here, never both: " + arms_words(budget) + ".",
                "The compensating glass is there to make both arms equal."};
    }
    if (budget.shortfall_is_inward) {
        return {StandardView::rear,
                "The image falls before the eyepieces. Even at the end of the focus travel it is "
                "{focus.shortfall}: no turn of the knob brings it there.",
                "The purple arrow runs from the image to where the eyepieces want it."};
    }
    return {StandardView::rear,
            "The image falls behind the eyepieces. Focus lies {focus.shortfall}: a spacer of that "
            "length right behind the focuser cures it.",
            "This is the cheap way to fail: a plain tube mends it."};
}

// The room is asked where the drawtube, or the mirror, is free to go wherever focus is.
TourStep focus_verdict(const FocusBudget& budget) {
    TourStep told = told_verdict(budget);
    if (drawtube_decides(budget)) return told;
    return asking({"Will it come to focus?",
                   {"Yes", "No, it falls short", "No, it falls too far"},
                   0,
                   "{focus.verdict}"},
                  std::move(told));
}

TourStep path_to_spend(const FocusBudget& budget) {
    if (budget.primary) {
        return {StandardView::side,
                "This telescope focuses by moving its main mirror. As it stands, the image lies "
                "{focus.back_focus} behind the rear face.",
                "Light path costs focal length here: the telescope becomes a longer one."};
    }
    return {
        StandardView::side,
        "With the drawtube fully in, the image stands {focus.back_focus} behind it. That is all "
        "the light path there is to spend.",
        "Back focus is a property of the telescope. It can be measured with a card and the "
        "Moon."};
}

// Light path that the head spends, reduced mm.
double path_of_head(const Setup& setup, const Report& report) {
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    double spends = 0;
    for (const LightPath& path : report.train.light_paths)
        if (path.part == head) spends = path.counted();
    return spends;
}

// The title does not tell what the room is asked.
Tour why_it_will_not_focus(const Setup& setup, const Report& report) {
    const FocusBudget& budget = report.budget;
    return {
        "why-it-will-not-focus",
        drawtube_decides(budget) ? "Where it focuses" : "Will it focus, and why",
        {lit_by({the_focuser, the_eyepieces}, focus_verdict(budget)),
         lit_by({the_telescope, the_focuser}, path_to_spend(budget)),
         lit_by(
             {the_chain, the_head},
             asking_number(
                 {"How much longer does the head alone make the light's path?",
                  "{head.path}",
                  path_of_head(setup, report),
                  " mm",
                  {0.1, 0.5, 1},
                  5},
                 {StandardView::rear,
                  "The parts behind the focuser spend {chain.path}, of which the head alone spends "
                  "{head.path}.",
                  "Air counts in full; glass counts its length divided by its index."}))}};
}

Tour what_a_shifter_does(const Setup& setup, const FocusBudget& budget) {
    const auto works =
        std::find_if(budget.shifters.begin(), budget.shifters.end(), [&](const ShifterAtWork& one) {
            return setup.parts.at(one.part).body.is<Shifter>();
        });
    Tour tour{"what-a-shifter-does", "What a shifter does", {}};
    if (works == budget.shifters.end()) {
        tour.steps = {{StandardView::side,
                       "There is no shifter in this setup. A negative lens in the chain would make "
                       "the cone slimmer and move the image outward.",
                       "Add one in the window and come back to this tour."},
                      {StandardView::rear,
                       "What it would give back in light path is paid for in magnification, now "
                       "{sight.magnification}, and in width of field, now {sight.true_field}.",
                       "Factor 1 + d / |f|, gain d - d / factor, for a thin lens at distance d."}};
        return tour;
    }
    tour.steps = {
        lit_by({the_shifter},
               asking_number(
                   {"How far does this one lens move the image outward?",
                    "{shifter.gain}",
                    works->gain.value,
                    " mm",
                    {0.5, 1, 1.6},
                    5},
                   {StandardView::rear,
                    "{shifter.name}: a lens {shifter.distance} before the image bends the cone, "
                    "and moves the image by {shifter.gain}.",
                    "A negative lens gives light path back; a positive one takes some more."})),
        lit_by({the_shifter, the_head},
               {StandardView::side,
                "Its real factor here is {shifter.factor}, by its real distance from the image, "
                "whatever its label says.",
                "Move the lens, and factor and gain both follow."}),
        lit_by({the_head, the_eyepieces},
               {StandardView::eyes,
                "That is what follows: {sight.magnification} and {sight.true_field} of sky, with a "
                "cone of {sight.focal_ratio}.",
                "A slimmer cone also passes the prisms with less loss."})};
    return tour;
}

// What the room guesses where there is something to be guessed.
TourStep edge_question(double light, TourStep step) {
    constexpr double dark_enough = 0.9;
    if (light > dark_enough) return step;
    const bool has_room_above = light < 0.7;
    return asking_number(
        {"How much of the light arrives at the edge of the field?", "{edge.light}", 100 * light,
         " %", has_room_above ? std::array{0.5, 1.0, 1.4} : std::array{0.4, 0.7, 1.0}, 5},
        std::move(step));
}

Tour why_the_edge_goes_dark(const Setup& setup, const Report& report) {
    const EyeClipping& dark = darker_at_edge(report);
    const bool is_dark =
        dark.edge_relative < as_bright_as_middle && !dark.rings.back().ends.empty();
    std::vector<std::string> rim;
    if (is_dark) {
        const std::size_t surface = dark.rings.back().ends.front().surface;
        rim = {lit_word_of(setup.parts[report.train.path(dark.eye).surfaces.at(surface).part])};
    }
    return {
        "why-the-edge-goes-dark",
        is_dark ? "Why the edge goes dark" : "Why the edge stays bright",
        {showing({TourShow::pupil},
                 {StandardView::overview,
                  "A star in the middle sends its cone down the axis. A star at the edge sends "
                  "it slantwise, nearer to every rim on the way.",
                  "Both cones start from the whole objective, which is painted here: P takes "
                  "the paint off."}),
         showing(
             {TourShow::pupil},
             lit_by(rim, edge_question(
                             dark.edge_relative,
                             {StandardView::rear,
                              is_dark ? "At the edge of the field only {edge.light} of the light "
                                        "arrives. What takes most of it: {edge.rim}."
                                      : "In this setup {edge.light} arrives at the edge of the "
                                        "field: no rim takes a share that an eye would notice.",
                              "Crosses mark rays that end at a rim. The colours tell which part of "
                              "the objective they come from."}))),
         lit_by({the_telescope, the_head},
                {StandardView::eyes,
                 "In the middle, {middle.aperture} of the telescope's {telescope.aperture} are "
                 "at work.",
                 "Wider prisms, a slimmer cone or a smaller field stop all help."})}};
}

// The kinds of parts that have glass in the light.
std::vector<std::string> kinds_with_glass(const Setup& setup, const Report& report) {
    std::vector<std::string> kinds;
    for (const LightPath& path : report.train.light_paths) {
        const std::string& kind = kind_of(setup.parts[path.part].body).key;
        if (path.glass > 0 && std::find(kinds.begin(), kinds.end(), kind) == kinds.end())
            kinds.push_back(kind);
    }
    return kinds;
}

Tour what_glass_does(const Setup& setup, const Report& report) {
    const std::vector<std::string> glass = kinds_with_glass(setup, report);
    return {
        "what-glass-does-to-light",
        "What glass does to light",
        {lit_by(
             glass,
             {StandardView::rear,
              "Light to the left eye passes {glass.length} of glass. It is slower there, by the "
              "index of the glass, and it converges more slowly.",
              "Two different things: the wait is length times index, the path that focus spends is "
              "length divided by index."}),
         lit_by(
             glass,
             {StandardView::side,
              "Blue and red do not come to one focus: {glass.colour} lie between them. A perfect "
              "image would forgive {glass.depth} either way.",
              report.image_quality[0].is_corrected
                  ? "The shifter here is made for glass and takes part of the error away."
                  : "A slimmer cone forgives more: depth of focus grows with the square of N."})}};
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
            what_a_shifter_does(setup, report.budget), why_the_edge_goes_dark(setup, report),
            what_glass_does(setup, report)};
}

}  // namespace beamfork
