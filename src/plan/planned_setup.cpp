#include "plan/planned_setup.hpp"

#include <algorithm>

#include "base/letters.hpp"
#include "document/words.hpp"

namespace beamfork {

namespace {

// Names are told apart within a role alone, as in any setup.
std::size_t add(Setup& setup, Part part) {
    part.name = free_name(setup, role_of(part), part.name);
    setup.parts.push_back(std::move(part));
    return setup.parts.size() - 1;
}

// Keys that a drawer has and a setup has not: their remarks would have no line to stand at.
Part without_drawer_remarks(Part part) {
    for (const char* key : {"wanted", "price", "note", "sits_on", "lower_by_mm"})
        part.remarks.erase(key);
    return part;
}

}  // namespace

Document planned_document(const Plan& plan, const PlannedTrain& train, std::size_t use) {
    const Tube& tube = plan.tube_of(train);
    Document document;
    Setup& setup = document.setup;
    setup.title = train_words(plan, train);
    for (const Part& part : tube.alone.parts)
        add(setup, without_drawer_remarks(part));
    const auto parts = plan.parts_of(train);
    for (std::size_t i = 2; i < parts.size(); ++i)
        add(setup, without_drawer_remarks(plan.part(parts[i])));
    setup.chosen.eyepiece = setup.parts.size() - 1;
    std::vector<std::size_t> taken;
    const auto take = [&](std::size_t part, std::size_t wanted, std::size_t& chosen) {
        if (std::find(taken.begin(), taken.end(), part) != taken.end()) return;
        taken.push_back(part);
        const std::size_t at = add(setup, without_drawer_remarks(plan.part(part)));
        if (part == wanted) chosen = at;
    };
    const Sighting& now = plan.parts.uses.at(use);
    for (const Sighting& one : plan.parts.uses)
        take(one.observer, now.observer, setup.chosen.observer);
    for (std::size_t i = 0; i < plan.parts.uses.size(); ++i) {
        if (tube.back_focus[i]) take(plan.parts.uses[i].target, now.target, setup.chosen.target);
    }
    constexpr std::size_t longest_title = 90;  // of the bytes that a title may have
    if (setup.title.size() > longest_title)
        setup.title = std::string(letters_within(setup.title, longest_title)) + "…";
    return document;
}

std::string train_words(const Plan& plan, const PlannedTrain& train) {
    const auto parts = plan.parts_of(train);
    const auto focusers =
        std::count_if(plan.parts.tubes.begin(), plan.parts.tubes.end(),
                      [&](const Tube& tube) { return tube.telescope == parts.front(); });
    std::string words = plan.part(parts.front()).name;
    for (std::size_t i = 1; i < parts.size(); ++i) {
        if (i > 1 || focusers > 1) words += " + " + plan.part(parts[i]).name;
    }
    return words;
}

}  // namespace beamfork
