#include <algorithm>

#include "app/plan/plan_drawer.hpp"

#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

using PlanJson = nlohmann::ordered_json;

PlanJson train_json(const TriedTrain& train) {
    const Setup& setup = train.document.setup;
    PlanJson parts = PlanJson::array();
    for (const std::size_t part : parts_in_light(setup, setup.chosen))
        parts.push_back(setup.parts[part].name);
    PlanJson results;
    for (const ResultInfo& info : all_results())
        results[info.key_with_unit()] = train.results[static_cast<std::size_t>(info.id)];
    return {{"title", setup.title},
            {"parts", std::move(parts)},
            {"observer", setup.parts[setup.chosen.observer].name},
            {"target", setup.parts[setup.chosen.target].name},
            {"drawtube_mm", train.focus.drawtube},
            {"primary_moved_mm", train.focus.primary_moved.value},
            {"score", train.score},
            {"unstated_joints", train.candidate.unstated_joints},
            {"results", std::move(results)},
            {"poor", train.poor}};
}

PlanJson purpose_json(const BestForPurpose& best, int& number) {
    PlanJson trains = PlanJson::array();
    for (const TriedTrain& train : best.trains) {
        PlanJson one{{"number", ++number}};
        one.update(train_json(train));
        trains.push_back(std::move(one));
    }
    return {{"purpose", best.purpose.key},
            {"label", best.purpose.label},
            {"serving", best.serving},
            {"worse_in_every_respect", best.outdone},
            {"failing_when_tried", best.failing},
            {"trains", std::move(trains)}};
}

PlanJson offer_json(const Offer& offer) {
    PlanJson price;
    if (offer.part.price)
        price = {{"amount", offer.part.price->amount}, {"currency", offer.part.price->currency}};
    return {{"name", offer.part.part.name},
            {"kind", kind_of(offer.part.part.body).key},
            {"is_wanted", !offer.is_usual},
            {"price", std::move(price)}};
}

PlanJson purchase_json(const Purchase& one) {
    PlanJson improvements = PlanJson::array();
    for (const Improvement& better : one.improvements) {
        improvements.push_back({{"purpose", better.purpose.key},
                                {"is_new", !better.before.has_value()},
                                {"train", train_json(better.with_it)},
                                {"measure_first", better.with_it.unsure_of}});
    }
    PlanJson telescopes = PlanJson::array();
    for (const OpenedTelescope& opened : one.telescopes)
        telescopes.push_back({{"telescope", opened.name},
                              {"train", train_json(opened.with_it)},
                              {"measure_first", opened.with_it.unsure_of}});
    PlanJson parts = PlanJson::array();
    for (const Offer& offer : one.parts)
        parts.push_back(offer_json(offer));
    return {{"parts", std::move(parts)},
            {"newly_reaching", one.newly_reaching},
            {"telescopes", std::move(telescopes)},
            {"improvements", std::move(improvements)}};
}

PlanJson tonight_json(const TonightsRow& row) {
    PlanJson steps = PlanJson::array();
    for (const RowStep& step : row.steps)
        steps.push_back({{"train", train_json(step.train)},
                         {"orders", step.orders},
                         {"exchanges", step.exchanges}});
    return {{"telescope", row.telescope}, {"steps", std::move(steps)}};
}

// Observer, target and focus; of targets that are too near for the telescope nothing.
PlanJson uses_json(const Plan& plan, const PlannedTrain& train) {
    PlanJson uses = PlanJson::array();
    for (std::size_t use = 0; use < plan.parts.uses.size(); ++use) {
        const auto focus = plan.focus(train, use);
        if (!focus) continue;
        uses.push_back({{"observer", plan.part(plan.parts.uses[use].observer).name},
                        {"target", plan.part(plan.parts.uses[use].target).name},
                        {"reaches", focus->reaches},
                        {"margin_in_mm", focus->margin_in},
                        {"margin_out_mm", focus->margin_out},
                        {"drawtube_mm", focus->drawtube},
                        {"shifter_factor", focus->factor}});
    }
    return uses;
}

PlanJson every_train_json(const Plan& plan) {
    PlanJson trains = PlanJson::array();
    for (const PlannedTrain& train : plan.trains) {
        PlanJson parts = PlanJson::array();
        for (const std::size_t part : plan.parts_of(train))
            parts.push_back(plan.part(part).name);
        trains.push_back({{"parts", std::move(parts)}, {"uses", uses_json(plan, train)}});
    }
    return trains;
}

}  // namespace

std::string plan_json(const PlannedDrawer& planned, bool every) {
    const Plan& plan = planned.plan;
    const auto reaching =
        std::count_if(plan.trains.begin(), plan.trains.end(),
                      [&](const PlannedTrain& train) { return train.reached == plan.all_uses(); });
    PlanJson purposes = PlanJson::array();
    int number = 0;
    for (const BestForPurpose& best : planned.best)
        purposes.push_back(purpose_json(best, number));
    PlanJson bought = PlanJson::array();
    for (const Purchase& one : planned.purchases)
        bought.push_back(purchase_json(one));
    PlanJson root{{"beamfork_plan", 1},
                  {"drawer", plan.drawer.title},
                  {"trains", plan.trains.size()},
                  {"reaching_for_all", reaching},
                  {"left_out", plan.parts.left_out},
                  {"purposes", std::move(purposes)},
                  {"purchases", std::move(bought)}};
    for (const TonightsRow& row : planned.tonight)
        root["tonight"].push_back(tonight_json(row));
    if (every) root["every_train"] = every_train_json(plan);
    return root.dump(2) + "\n";
}

}  // namespace beamfork
