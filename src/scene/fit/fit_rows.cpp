#include "scene/fit/fit_rows.hpp"

#include <cmath>

#include "base/text.hpp"
#include "scene/kit/result_row.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* none = "–";

ValueRow zenith_row(const Setup& setup, const ZenithRoom& room) {
    std::string help = fmt::format(
        "What must be free behind the focuser when the telescope points up, so that fork, tripod "
        "or pier are clear: from the racked-in drawtube's rear end along its axis to the farthest "
        "point of all bodies, at this focus. {} reaches that far. Housings wider than the parts' "
        "stated sizes, caps and knobs come on top: leave 10 mm (common practice, no source).",
        setup.parts[room.part].name);
    if (room.is_sideways)
        help += " This focuser stands out of the tube’s side: it is room beside the tube.";
    if (room.is_straight)
        help += " You look straight through, so your head wants room below it, too.";
    if (room.there) help += fmt::format(" Stated as free: {:.0f} mm.", room.there->value);
    return {(room.is_sideways ? "Room beside the tube, set by " : "Room at the zenith, set by ")
                + setup.parts[room.part].name,
            format_number(room.wanted.value, 0), "mm", std::move(help)};
}

std::string gaze_words(Degrees gaze) {
    if (abs(gaze) < Degrees{0.5}) return "level";
    return fmt::format("{:.0f}° {}", abs(gaze).value, gaze < Degrees{} ? "down" : "up");
}

// How high the eyes are over the whole sky, and what that asks of who stands and who sits.
void add_height_rows(std::vector<ValueRow>& rows, const EyeHeight& eyes) {
    const std::string pivot = fmt::format(
        "Axis: {:.0f} mm behind the objective's place, {}.", eyes.pivot.value,
        eyes.pivot_is_stated ? "the tube's balance point"
                             : "half way to the focuser, as the balance point is not stated");
    for (const EyePlace& place : eyes.places) {
        rows.push_back({fmt::format("Eyes at {:.0f}°, looking {}", place.altitude.value,
                                    gaze_words(place.gaze)),
                        format_signed(place.height.value, 0), "mm",
                        fmt::format("How high the eyepieces stand above the mount's axis when the "
                                    "telescope points that high, the tube turned about a level "
                                    "axis: y cos a - z sin a. {}",
                                    pivot)});
    }
    const auto axis_row = [&](const char* label, Millimetres eye) {
        rows.push_back(
            {label,
             fmt::format("{:.2f}–{:.2f}", to_metres(eye - eyes.highest).value,
                         to_metres(eye - eyes.lowest).value),
             "m",
             fmt::format("Where the mount's axis would have to be for eyes {:.2f} m above the "
                         "ground, from the altitude with the highest eyepieces to that with the "
                         "lowest. At one height of the axis the eyes move by {:.0f} mm over the "
                         "whole sky: common practice, no source, for the eyes' height.",
                         to_metres(eye).value, eyes.range().value)});
    };
    axis_row("Axis height, standing", standing_eyes);
    axis_row("Axis height, sitting", sitting_eyes);
}

// How focus goes with the pupil distance; nothing where it does not.
void add_distance_rows(std::vector<ValueRow>& rows,
                       const Setup& setup,
                       const DistanceCoupling& coupling) {
    if (coupling.path_per_mm == 0) return;
    rows.push_back({"Path per mm of distance", format_signed(coupling.path_per_mm, 2), "mm/mm",
                    "How much longer the light path in each arm becomes for one mm more between "
                    "the pupils: found by laying out the head half a mm wider and narrower and "
                    "comparing glass and air."});
    rows.push_back(
        {"Refocus per mm of distance", format_signed(coupling.refocus_per_mm, 2), "mm/mm",
         "By which the drawtube, or a moving mirror's image, must go out (+) or in for one "
         "mm more between the pupils: focus budget of the head half a mm wider less that "
         "half a mm narrower. Through a shifter it is less than the path."});
    rows.push_back(
        {"Path over its whole range", format_signed(coupling.whole_range().value, 1), "mm",
         fmt::format("How much longer each arm is at {:.1f} mm than at {:.1f} mm, from "
                     "glass and air. A stated light path holds in the middle.",
                     coupling.ends.back().distance.value, coupling.ends.front().distance.value)});
    for (const DistanceChange& change : coupling.observers) {
        const std::string& name = setup.parts[*change.observer].name;
        rows.push_back(
            {"Refocus for " + name, format_signed(change.refocus.value, 1), "mm",
             fmt::format("By which the drawtube, or a moving mirror's image, must go out (+) or in "
                         "when the head is set from {:.1f} to {:.1f} mm for {}: back focus needed "
                         "before, less after. The correction of the eyes comes on top.{}",
                         coupling.present.value, change.distance.value, name,
                         change.seats_suffice
                             ? fmt::format(" The seats can do it instead, both by {} mm.",
                                           format_signed(-change.path.value, 1))
                             : "")});
    }
}

std::vector<ValueRow> eye_rows(const Setup& setup, const Report& report) {
    const Fit& fit = report.fit;
    const EyepieceSpacing& spacing = fit.spacing;
    std::vector<ValueRow> rows{
        {"Pupil distance", format_number(spacing.pupil_distance.value, 1), "mm",
         fmt::format("Of the observer. This head serves {:.1f} to {:.1f} mm, from its arms and "
                     "mechanism.",
                     spacing.narrowest.value, spacing.widest.value)},
        {"Head can be set to",
         fmt::format("{:.1f}–{:.1f}", spacing.narrowest.value, spacing.widest.value), "mm",
         fmt::format("Pupil distances that the head serves, from its arms and mechanism.{}",
                     spacing.is_in_range ? "" : " This observer's is not among them.")},
        {"Between the eyepieces", format_number(spacing.gap.value, 1), "mm",
         "Distance of the two axes less the housings' outer diameter: room for the nose; 15 to 20 "
         "mm is usual (common practice, no source)."},
        {"Widest housing", format_number(std::max(0.0, spacing.widest_housing.value), 1), "mm",
         fmt::format("Distance of the two axes less {:.0f} mm for the nose (common practice, no "
                     "source).",
                     nose_wants.value)}};
    add_distance_rows(rows, setup, report.distance);
    if (fit.tightest) {
        rows.push_back(
            {"Tightest nose", format_number(fit.tightest->room.value, 1), "mm",
             fmt::format("Room left between the {} of {} and the {} of {}, along the light; "
                         "before a tilted mirror the edge counts.{}",
                         fit.tightest->what, setup.parts[fit.tightest->part].name,
                         fit.tightest->obstacle, setup.parts[fit.tightest->other].name,
                         hangs_on_unstated(report.train, *fit.tightest)
                             ? " Where that glass stands is not stated."
                             : "")});
    }
    rows.push_back(zenith_row(setup, fit.zenith));
    add_height_rows(rows, fit.eyes);
    rows.push_back({"Field seen in full light", format_number(100 * fit.seen.full_light_share, 0),
                    "%",
                    "Share of the field's width whose beams enter the eye's pupil whole: arc "
                    "tangent of half of (eye pupil less exit pupil) over the distance of the eye "
                    "behind the exit pupil, over half of the apparent field (plane geometry)."});
    rows.push_back({"Field seen by half or more", format_number(100 * fit.seen.half_light_share, 0),
                    "%", "As above, up to where the middle of the beam meets the pupil's edge."});
    return rows;
}

std::vector<ValueRow> weight_rows(const Fit& fit) {
    const Load& load = fit.load;
    std::vector<ValueRow> rows{
        result_row(info_of(ResultId::load), load.mass.value),
        {"Rated load", load.rated ? format_number(load.rated->value, 0) : none, "g",
         "What the focuser's maker states; makers seldom say at which lever."}};
    if (load.mass <= Grams{}) {
        rows[0].value = none;
        return rows;
    }
    rows.push_back({"Lever", format_number(load.lever.value, 0), "mm",
                    "From where the racked-in drawtube leaves the focuser back to the centre of "
                    "mass, along the drawtube. Each part's mass is taken to sit in the middle of "
                    "the volume of its bodies."});
    rows.push_back(
        {"Bending moment", format_number(load.bending.value, 2), "Nm",
         "Mass times standard gravity (9.80665 m/s²) times lever, with the tube level."});
    rows.push_back({"Twisting moment", format_number(load.twisting.value, 2), "Nm",
                    "Mass times gravity times how far the centre of mass lies beside the "
                    "drawtube's axis, tube level: it turns the diagonal or the drawtube."});
    if (!fit.balance) return rows;
    rows.push_back({"Balance moves back", format_number(fit.balance->shift.value, 0), "mm",
                    "Mass times its lever from the tube's balance point, over the sum of both "
                    "masses (law of the lever)."});
    if (fit.balance->counterweight)
        rows.push_back({"Counterweight", format_number(fit.balance->counterweight->value, 0), "g",
                        "Mass times its lever over the counterweight's distance, m a / b, on the "
                        "other side of the balance point (law of the lever)."});
    return rows;
}

std::string weight_note(const Setup& setup, const Fit& fit) {
    std::string note;
    const auto& unstated = fit.load.unstated;
    for (std::size_t i = 0; i < unstated.size(); ++i)
        note += (i == 0 ? "Mass not stated: " : ", ") + setup.parts[unstated[i]].name;
    if (!note.empty()) note += ". ";
    return note
           + "Tighten every clamp and thread and balance both axes anew while you hold the tube; "
             "what the makers of mount and focuser allow comes first.";
}

JointRow joint_row(const Setup& setup, const Joint& joint) {
    JointRow row;
    row.behind = joint.behind;
    row.parts = setup.parts[joint.before].name + " → " + setup.parts[joint.behind].name;
    row.ends = to_word(joint.rear) + " | " + to_word(joint.front);
    row.verdict = joint.is_claimed() ? (joint.fits() ? "fits" : "needs an adapter") : "not stated";
    row.role = !joint.is_claimed() ? ColourRole::dimension
               : joint.fits()      ? ColourRole::good
                                   : ColourRole::clipped;
    row.help = row.parts + ": " + row.ends + ". ";
    row.help += !joint.is_claimed() ? "State both fittings to have this joint checked."
                : joint.fits()
                    ? "These two ends join."
                    : "Between them goes " + adapter_between(joint.rear, joint.front) + ".";
    return row;
}

}  // namespace

FitRows fit_rows(const Setup& setup, const Report& report) {
    FitRows rows;
    const auto& [left, right] = report.orientation;
    rows.image = left == right || to_words(left) == to_words(right)
                     ? "Image in both eyes: " + to_words(left)
                     : "Left image: " + to_words(left) + "; right image: " + to_words(right);
    rows.eyes = eye_rows(setup, report);
    rows.weight = weight_rows(report.fit);
    rows.weight_note = weight_note(setup, report.fit);
    for (const Joint& joint : report.fit.joints)
        rows.joints.push_back(joint_row(setup, joint));
    return rows;
}

}  // namespace beamfork
