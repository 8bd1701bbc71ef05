// What glass does to light: a thick plate pushes the image back, and colours part.
#include <algorithm>

#include "base/text.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/spacer.hpp"
#include "scene/tour/tour_makers.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr Millimetres plate_thickness{20};

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

Setup held_at(Setup setup, Millimetres drawtube) {
    for (Part& part : setup.parts) {
        if (auto* focuser = part.body.as<Focuser>()) focuser->held_at = drawtube;
    }
    return setup;
}

// As much room in front of the head, of glass and of air. The drawtube stands still.
struct PlateInLight {
    Setup glass;
    Setup air;
    Millimetres pushed;
};

// The drawtube stands where the glass is in focus.
std::optional<PlateInLight> plate_in_light(const Setup& setup) {
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    FilterPlate plate;
    plate.thickness = plate_thickness;
    plate.ring_length = plate_thickness;
    plate.clear_diameter = Millimetres{60};
    Spacer room;
    room.length = plate_thickness;
    const Setup free = with_part(setup, head, {"Thick plate of glass", plate, {}, {}});
    const auto budget = solved_focus(free, free.chosen);
    if (!budget) return std::nullopt;
    PlateInLight made{
        held_at(free, budget->drawtube),
        held_at(with_part(setup, head, {"As much air", room, {}, {}}), budget->drawtube),
        {}};
    const auto glass = build_axes(made.glass, made.glass.chosen, budget->drawtube);
    const auto air = build_axes(made.air, made.air.chosen, budget->drawtube);
    if (!glass || !air) return std::nullopt;
    made.pushed = image_behind_stop(*glass, Eye::left) - image_behind_stop(*air, Eye::left);
    return made;
}

TourStep plate_step(const PlateInLight& plate) {
    const double share = plate.pushed.value / plate_thickness.value;
    return told_of(
        {plate.glass, plate.air, "image without the glass"},
        {StandardView::rear,
         fmt::format(
             "A plate of glass, {} thick, is put into the light for this step: rays "
             "converge more slowly in it, and the image moves {} farther out, {:.0f}\u00A0% "
             "of the plate. Green is the light without it.",
             millimetres(plate_thickness), millimetres(plate.pushed), 100 * share),
         "Thickness times (n - 1) / n: a third of it for n = 1.5. The drawtube stands still."});
}

}  // namespace

Tour what_glass_does(const Setup& setup, const Report& report) {
    const std::vector<std::string> glass = kinds_with_glass(setup, report);
    Tour tour{"what-glass-does-to-light", "What glass does to light", {}};
    const auto plate = plate_in_light(setup);
    if (plate && !report.budget.primary) tour.steps.push_back(plate_step(*plate));
    tour.steps.push_back(lit_by(
        glass,
        {StandardView::rear,
         "Light to the left eye passes {glass.length} of glass on its way, in the parts that "
         "stand out here. Focus spends that length divided by its index.",
         "Two different things: the wait is length times index, the path that focus spends "
         "is length divided by index."}));
    tour.steps.push_back(showing(
        {TourShow::colours},
        {StandardView::rear,
         "Blue, green and red do not come to one focus: {glass.colour} lie between blue and red, "
         "drawn here beside the eyepieces and many times as long. A perfect image would forgive "
         "{glass.depth} either way.",
         report.image_quality[0].is_corrected
             ? "The shifter here is made for glass and takes part of the error away."
             : "A slimmer cone forgives more: depth of focus grows with the square of N."}));
    return tour;
}

}  // namespace beamfork
