#include "scene/built_in_tours.hpp"

#include <algorithm>

#include "scene/tour_quotes.hpp"

namespace beamfork {

namespace {

constexpr double as_bright_as_middle = 0.99;  // common practice, no source: nobody sees 1 %

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
         {StandardView::rear,
          "A half-mirror inside the cube divides the light: {head.left} of what it does not lose "
          "turns to the left eye, {head.right} goes on to the right.",
          "Each eye gets the whole picture, only dimmer: the light is divided, not the field."},
         {StandardView::eyes,
          slides ? "Prisms carry both beams to the eyes. The outer prisms slide to set the "
                   "distance between the eyes, and that changes the light path."
                 : "Prisms carry both beams to the eyes. Both arms turn about the hinge, so that "
                   "the eyes' distance is set without a change of focus.",
          "Set the distance first, focus after."},
         {StandardView::overview,
          "Of the light that falls on the telescope, {eye.left} enters the left eye and "
          "{eye.right} the right, at {sight.magnification}.",
          "Never at the Sun without a certified solar filter over the whole front opening."}}};
}

// A moving mirror focuses whatever holds the drawtube.
bool drawtube_decides(const FocusBudget& budget) { return budget.is_held && !budget.primary; }

TourStep focus_verdict(const FocusBudget& budget) {
    if (drawtube_decides(budget)) {
        return {StandardView::rear,
                "Here the drawtube is held at {focus.drawtube}; focus wants it at {focus.wanted}.",
                "Free the drawtube in the focuser's properties to see whether it can go there."};
    }
    if (budget.reaches) {
        return {
            StandardView::rear,
            "This setup reaches focus, with {focus.margin_in} left inward and {focus.margin_out} "
            "outward. Longer parts use up the first, shorter parts the second.",
            "5 to 10 mm should be left either way (common practice)."};
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

Tour why_it_will_not_focus(const FocusBudget& budget) {
    const std::string title = drawtube_decides(budget) ? "Where it focuses"
                              : budget.reaches         ? "Why it focuses, and what would spoil it"
                                                       : "Why it will not focus";
    return {"why-it-will-not-focus",
            title,
            {path_to_spend(budget),
             {StandardView::rear,
              "The parts behind the focuser spend {chain.path}, of which the head alone spends "
              "{head.path}.",
              "Air counts in full; glass counts its length divided by its index."},
             focus_verdict(budget)}};
}

Tour what_a_shifter_does(const Setup& setup, const FocusBudget& budget) {
    const bool works = std::any_of(budget.shifters.begin(), budget.shifters.end(), [&](auto& one) {
        return std::holds_alternative<Shifter>(setup.parts.at(one.part).body);
    });
    Tour tour{"what-a-shifter-does", "What a shifter does", {}};
    if (!works) {
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
        {StandardView::side,
         "{shifter.name}: a lens {shifter.distance} before the image bends the cone, and "
         "moves the image by {shifter.gain}.",
         "A negative lens gives light path back; a positive one takes some more."},
        {StandardView::rear,
         "Its real factor here is {shifter.factor}, by its real distance from the image, "
         "whatever its label says.",
         "Move the lens, and factor and gain both follow."},
        {StandardView::eyes,
         "That is what follows: {sight.magnification} and {sight.true_field} of sky, with a "
         "cone of {sight.focal_ratio}.",
         "A slimmer cone also passes the prisms with less loss."}};
    return tour;
}

Tour why_the_edge_goes_dark(const Report& report) {
    const EyeClipping& dark = darker_at_edge(report);
    const bool is_dark =
        dark.edge_relative < as_bright_as_middle && !dark.rings.back().ends.empty();
    return {
        "why-the-edge-goes-dark",
        is_dark ? "Why the edge goes dark" : "Why the edge stays bright",
        {{StandardView::overview,
          "A star in the middle sends its cone down the axis. A star at the edge sends it "
          "slantwise, nearer to every rim on the way.",
          "Both cones start from the whole objective."},
         {StandardView::rear,
          is_dark ? "At the edge of the field only {edge.light} of the light arrives. What takes "
                    "most of it: {edge.rim}."
                  : "In this setup {edge.light} arrives at the edge of the field: no rim takes a "
                    "share that an eye would notice.",
          "Crosses mark rays that end at a rim."},
         {StandardView::eyes,
          "In the middle, {middle.aperture} of the telescope's {telescope.aperture} are at work.",
          "Wider prisms, a slimmer cone or a smaller field stop all help."}}};
}

Tour what_glass_does(const Report& report) {
    return {"what-glass-does-to-light",
            "What glass does to light",
            {{StandardView::rear,
              "Light to the left eye passes {glass.length} of glass. It is slower there, by the "
              "index of the glass, and it converges more slowly.",
              "Two different things: the wait is length times index, the path that focus spends is "
              "length divided by index."},
             {StandardView::side,
              "Blue and red do not come to one focus: {glass.colour} lie between them. A perfect "
              "image would forgive {glass.depth} either way.",
              report.image_quality[0].is_corrected
                  ? "The shifter here is made for glass and takes part of the error away."
                  : "A slimmer cone forgives more: depth of focus grows with the square of N."}}};
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
    return {one_beam_becomes_two(setup), why_it_will_not_focus(report.budget),
            what_a_shifter_does(setup, report.budget), why_the_edge_goes_dark(report),
            what_glass_does(report)};
}

}  // namespace beamfork
