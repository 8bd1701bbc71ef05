#include "app/check/fit_section.hpp"

#include <algorithm>

#include "scene/fit/fit_rows.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

Json load_json(const Setup& setup, const Load& load) {
    Json unstated = Json::array();
    for (const std::size_t part : load.unstated)
        unstated.push_back(setup.parts[part].name);
    Json json{{"mass_g", load.mass.value},
              {"mass_unstated", std::move(unstated)},
              {"lever_mm", load.lever.value},
              {"bending_nm", load.bending.value},
              {"twisting_nm", load.twisting.value}};
    if (load.rated) json["rated_load_g"] = load.rated->value;
    return json;
}

Json joints_json(const Setup& setup, const Fit& fit) {
    Json list = Json::array();
    for (const Joint& joint : fit.joints) {
        Json one{{"before", setup.parts[joint.before].name},
                 {"behind", setup.parts[joint.behind].name},
                 {"rear_fitting", to_word(joint.rear)},
                 {"front_fitting", to_word(joint.front)},
                 {"fits", joint.fits()}};
        if (!joint.fits()) one["adapter"] = adapter_between(joint.rear, joint.front);
        list.push_back(std::move(one));
    }
    return list;
}

// To the setup's other observers, then to both ends of the range.
Json changes_json(const Setup& setup, const DistanceCoupling& coupling) {
    Json list = Json::array();
    const auto add = [&](const DistanceChange& change) {
        Json one{{"pupil_distance_mm", change.distance.value},
                 {"wider_mm", change.wider.value},
                 {"path_mm", change.path.value},
                 {"refocus_mm", change.refocus.value},
                 {"reaches", change.reaches},
                 {"shortfall_mm", change.missing.value},
                 {"seats_suffice", change.seats_suffice}};
        if (change.observer) one["observer"] = setup.parts[*change.observer].name;
        list.push_back(std::move(one));
    };
    for (const DistanceChange& change : coupling.observers)
        add(change);
    for (const DistanceChange& change : coupling.ends)
        add(change);
    return list;
}

Json heights_json(const EyeHeight& eyes) {
    Json list = Json::array();
    for (const EyePlace& place : eyes.places)
        list.push_back({{"altitude_deg", place.altitude.value},
                        {"above_axis_mm", place.height.value},
                        {"gaze_deg", place.gaze.value}});
    return list;
}

std::string lines(const std::vector<ValueRow>& rows) {
    std::string out;
    for (const ValueRow& row : rows)
        out += fmt::format("  {:<48}{:>9} {}\n", row.label, row.value, row.unit);
    return out;
}

}  // namespace

Json fit_json(const Setup& setup, const Report& report) {
    const Fit& fit = report.fit;
    Json json{{"pupil_distance_mm", fit.spacing.pupil_distance.value},
              {"narrowest_mm", fit.spacing.narrowest.value},
              {"widest_mm", fit.spacing.widest.value},
              {"in_range", fit.spacing.is_in_range},
              {"eyepiece_gap_mm", fit.spacing.gap.value},
              {"widest_housing_mm", fit.spacing.widest_housing.value},
              {"path_per_mm", report.distance.path_per_mm},
              {"refocus_per_mm", report.distance.refocus_per_mm},
              {"distance_changes", changes_json(setup, report.distance)},
              {"full_light_field_share", fit.seen.full_light_share},
              {"half_light_field_share", fit.seen.half_light_share},
              {"load", load_json(setup, fit.load)},
              {"joints", joints_json(setup, fit)}};
    if (fit.tightest) json["nose_clearance_mm"] = fit.tightest->room.value;
    json["zenith"] = {{"wanted_mm", fit.zenith.wanted.value},
                      {"part", setup.parts[fit.zenith.part].name},
                      {"sideways", fit.zenith.is_sideways}};
    if (fit.zenith.there) json["zenith"]["free_mm"] = fit.zenith.there->value;
    json["eye_heights"] = heights_json(fit.eyes);
    if (fit.balance) {
        json["balance"] = {{"lever_mm", fit.balance->lever.value},
                           {"shift_mm", fit.balance->shift.value}};
        if (fit.balance->counterweight)
            json["balance"]["counterweight_g"] = fit.balance->counterweight->value;
    }
    return json;
}

std::string fit_line(const Setup& setup, const Report& report) {
    const Fit& fit = report.fit;
    const auto open =
        std::ranges::count_if(fit_rows(setup, report).joints, [](const JointRow& joint) {
            return joint.role != ColourRole::dimension;
        });
    return fmt::format("{:.0f} mm between the eyepieces; head {:.1f} to {:.1f} mm; {}",
                       fit.spacing.gap.value, fit.spacing.narrowest.value, fit.spacing.widest.value,
                       open == 0 ? "every joint fits" : fmt::format("{} joints to look at", open));
}

std::string fit_text(const Setup& setup, const Report& report) {
    const FitRows rows = fit_rows(setup, report);
    std::string out = "FIT\n  " + rows.image + "\n" + lines(rows.eyes) + lines(rows.weight);
    for (const JointRow& joint : rows.joints) {
        if (joint.role == ColourRole::dimension) continue;
        out += fmt::format("  {}: {} ({})\n", joint.parts, joint.ends, joint.verdict);
    }
    return out;
}

Json orientation_json(const Setup&, const Report& report, std::size_t side) {
    const ImageOrientation& one = report.orientation[side];
    return {{"mirrored", one.is_mirrored}, {"turn_deg", one.turn.value}, {"words", to_words(one)}};
}

}  // namespace beamfork
