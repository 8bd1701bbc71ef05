#include <algorithm>
#include <array>

#include "app/check/check.hpp"
#include "app/check/check_sections.hpp"
#include "study/cures/cure_search.hpp"

namespace beamfork {

namespace {

Json focus_json(const FocusBudget& budget) {
    Json rows = Json::array();
    for (const BudgetRow& row : budget.rows) {
        rows.push_back(
            {{"label", row.label}, {"change_mm", row.change.value}, {"left_mm", row.left.value}});
    }
    Json json{{"drawtube_mm", budget.wanted_drawtube.value},
              {"travel_mm", budget.travel.value},
              {"reaches", budget.reaches},
              {"margin_in_mm", budget.margin_in.value},
              {"margin_out_mm", budget.margin_out.value},
              {"shortfall_mm", budget.shortfall.value},
              {"seats_take_up_mm", budget.seats_take_up.value},
              {"seats_lack_mm", budget.seats_lack.value},
              {"arm_difference_mm", budget.arm_difference.value},
              {"budget", std::move(rows)}};
    if (const auto& primary = budget.primary) {
        json["primary"] = {{"moved_up_mm", primary->moved.value},
                           {"back_focus_mm", primary->back_focus.value},
                           {"stated_back_focus_mm", primary->stated_back_focus.value},
                           {"focal_length_mm", primary->focal_length.value},
                           {"stated_focal_length_mm", primary->stated_focal_length.value},
                           {"focal_length_per_back_focus", primary->focal_length_per_mm}};
    }
    return json;
}

Json eye_json(const Setup& setup, const Report& report, const EyeClipping& eye) {
    Json illumination = Json::array();
    for (const LitRing& ring : eye.rings) {
        Json ends = Json::object();
        for (const EndShare& end : ring.ends) {
            const std::string name = end_name(setup, report.train.path(eye.eye), end);
            // Of stops by one name together; all light is 1, whatever rounding makes of the sum.
            ends[name] = std::min(1.0, ends.value(name, 0.0) + end.share);
        }
        illumination.push_back({{"field_fraction", ring.field_fraction},
                                {"relative", ring.relative},
                                {"ends", std::move(ends)}});
    }
    const std::size_t side = side_of(eye.eye);
    Json json{{"illumination", std::move(illumination)},
              {"fully_illuminated_diameter_mm", eye.fully_illuminated_diameter.value},
              {"edge_relative_illumination", eye.edge_relative},
              {"working_aperture_mm", eye.working_aperture.value},
              {"obstructed_share", eye.obstructed_share},
              {"focus_before_stop_mm", report.gap(eye.eye).value},
              {"real_ray_focus_behind_stop_mm", report.real_focus[side].best.value},
              {"seat_shift_mm", report.train.path(eye.eye).seat_shift}};
    for (const CheckSection& section : check_sections()) {
        if (section.eye_json) json[section.key] = section.eye_json(setup, report, side);
    }
    return json;
}

Json cures_json(const Finding& finding) {
    Json list = Json::array();
    for (const Cure& cure : finding.cures) {
        Json effect = Json::array();
        for (const EffectLine& line : cure.effect)
            effect.push_back(
                {{"quantity", line.quantity}, {"change", line.change}, {"gain", line.is_gain}});
        list.push_back({{"what", cure.what},
                        {"effect", effect},
                        {"cost", cure.cost},
                        {"ease", to_words(cure.reversibility)},
                        {"removes", cure.removes}});
    }
    return list;
}

Json findings_json(const Setup& setup, const Report& report) {
    Json list = Json::array();
    for (const Finding& finding : report.findings) {
        Json one{{"severity", to_word(finding.severity)},
                 {"id", finding.id},
                 {"sentence", finding.sentence}};
        if (!finding.advice.empty()) one["advice"] = finding.advice;
        if (finding.part) one["part"] = setup.parts[*finding.part].name;
        if (report.cures_are_sought && wants_cure(finding)) one["cures"] = cures_json(finding);
        list.push_back(std::move(one));
    }
    return list;
}

Json combination_json(const Setup& setup, const Combination& one) {
    const Report& report = one.report;
    Json json{{"eyepiece", setup.parts[one.choice.eyepiece].name},
              {"observer", setup.parts[one.choice.observer].name},
              {"target", setup.parts[one.choice.target].name},
              {"focus", focus_json(report.budget)}};
    for (const ResultId id : results_of_a_combination()) {
        const ResultInfo& result = info_of(id);
        json[result.key_with_unit()] = result.value(report);
    }
    json["image_turned"] = report.magnification.image_turned;
    json["left_eye"] = eye_json(setup, report, report.clipping[0]);
    json["right_eye"] = eye_json(setup, report, report.clipping[1]);
    json["findings"] = findings_json(setup, report);
    for (const CheckSection& section : check_sections()) {
        if (section.json) json[section.key] = section.json(setup, report);
    }
    return json;
}

// What counts in place of numbers that are left unstated.
Json unstated_json(const Part& part) {
    Json list = Json::array();
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto taken = taken_value(part.body, field.key);
        if (!taken || !is_relevant(part.body, field)) continue;
        Json one{{"key", field.key}, {"value", taken->value}};
        if (taken->is_derived()) one["derived_from"] = taken->derived_from;
        list.push_back(std::move(one));
    }
    return list;
}

}  // namespace

std::span<const ResultId> results_of_a_combination() {
    static constexpr std::array told{ResultId::shifter_factor,  ResultId::effective_focal_length,
                                     ResultId::focal_ratio,     ResultId::magnification,
                                     ResultId::true_field,      ResultId::exit_pupil,
                                     ResultId::working_aperture};
    return told;
}

std::string check_json(const CheckedSetup& checked) {
    Json parts = Json::array();
    for (const LightPath& path : checked.combinations.at(checked.chosen).report.train.light_paths) {
        if (role_of(checked.setup.parts[path.part]) == Role::eyepiece) continue;
        Json one{{"part", checked.setup.parts[path.part].name},
                 {"derived_light_path_mm", path.derived_left},
                 {"glass_mm", path.glass}};
        if (path.stated) one["stated_light_path_mm"] = *path.stated;
        if (path.beyond_stated != 0) one["beyond_stated_mm"] = path.beyond_stated;
        if (auto unstated = unstated_json(checked.setup.parts[path.part]); !unstated.empty())
            one["unstated"] = std::move(unstated);
        parts.push_back(std::move(one));
    }
    Json all = Json::array();
    for (const Combination& one : checked.combinations)
        all.push_back(combination_json(checked.setup, one));
    Json root{{"beamfork_check", 1},
              {"title", checked.setup.title},
              {"poor", checked.is_poor()},
              {"chosen", checked.chosen},
              {"light_paths", std::move(parts)},
              {"combinations", std::move(all)}};
    const Report& now = checked.combinations.at(checked.chosen).report;
    for (const CheckSection& section : check_sections()) {
        if (section.setup_json) root[section.key] = section.setup_json(checked.setup, now);
    }
    return root.dump(2) + "\n";
}

}  // namespace beamfork
