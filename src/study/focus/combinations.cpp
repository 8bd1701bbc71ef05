#include "study/focus/combinations.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace beamfork {

namespace {

void leave_out_one(std::vector<std::size_t>& parts,
                   std::size_t chosen,
                   std::vector<std::size_t>& left_out) {
    const auto last = parts.back() != chosen ? parts.end() - 1 : parts.end() - 2;
    left_out.push_back(*last);
    parts.erase(last);
}

}  // namespace

Combinations combinations(const Setup& setup, const Choice& chosen) {
    auto eyepieces = parts_with_role(setup, Role::eyepiece);
    auto observers = parts_with_role(setup, Role::observer);
    auto targets = parts_with_role(setup, Role::target);
    Combinations found;
    while (eyepieces.size() * observers.size() * targets.size() > most_combinations) {
        const std::size_t longest = std::max({eyepieces.size(), observers.size(), targets.size()});
        if (targets.size() == longest) {
            leave_out_one(targets, chosen.target, found.left_out);
        } else if (observers.size() == longest) {
            leave_out_one(observers, chosen.observer, found.left_out);
        } else {
            leave_out_one(eyepieces, chosen.eyepiece, found.left_out);
        }
    }
    std::sort(found.left_out.begin(), found.left_out.end());
    for (const std::size_t eyepiece : eyepieces) {
        for (const std::size_t observer : observers) {
            for (const std::size_t target : targets)
                found.studied.push_back({eyepiece, observer, target});
        }
    }
    return found;
}

std::string left_out_sentence(const Setup& setup, const std::vector<std::size_t>& left_out) {
    constexpr std::size_t most_told = 5;
    if (left_out.empty()) return "";
    std::string names;
    for (std::size_t i = 0; i < std::min(left_out.size(), most_told); ++i) {
        const bool is_last = i + 1 == left_out.size();
        names += fmt::format("{}“{}”",
                             i == 0    ? ""
                             : is_last ? " and "
                                       : ", ",
                             setup.parts[left_out[i]].name);
    }
    if (left_out.size() > most_told)
        names += fmt::format(" and {} more", left_out.size() - most_told);
    return fmt::format("More than {} combinations are not studied: left out {} {}.",
                       most_combinations, left_out.size() == 1 ? "is" : "are", names);
}

}  // namespace beamfork
