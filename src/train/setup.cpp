#include "train/setup.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace beamfork {

std::vector<std::size_t> parts_with_role(const Setup& setup, Role role) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (role_of(setup.parts[i]) == role) found.push_back(i);
    }
    return found;
}

std::vector<std::size_t> parts_in_light(const Setup& setup, const Choice& choice) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (role_of(setup.parts[i]) < Role::eyepiece) found.push_back(i);
    }
    found.push_back(choice.eyepiece);
    return found;
}

namespace {

struct Wanted {
    Role role;
    const char* name;
    const char* names;
    std::size_t least;
    std::size_t most;
};

constexpr std::array wanted_parts{
    Wanted{Role::telescope, "telescope", "telescopes", 1, 1},
    Wanted{Role::focuser, "focuser", "focusers", 1, 1},
    Wanted{Role::chain, "part of the chain", "parts between focuser and splitter head", 0, 100},
    Wanted{Role::splitter, "splitter head", "splitter heads", 1, 1},
    Wanted{Role::eyepiece, "eyepiece pair", "eyepiece pairs", 1, 40},
    Wanted{Role::observer, "observer", "observers", 1, 40},
    Wanted{Role::target, "target", "targets", 1, 40},
};

std::array<std::size_t, role_count> count_by_role(const Setup& setup) {
    std::array<std::size_t, role_count> count{};
    for (const Part& part : setup.parts)
        ++count[static_cast<std::size_t>(role_of(part))];
    return count;
}

std::string limit_words(const Wanted& wanted, std::size_t found) {
    if (wanted.most == 1)
        return fmt::format("the setup has {} {}; it can have only one", found, wanted.names);
    return fmt::format("a setup can have at most {} {}", wanted.most, wanted.names);
}

}  // namespace

std::optional<OrderFault> too_many_parts(const Setup& setup) {
    const auto count = count_by_role(setup);
    for (const Wanted& wanted : wanted_parts) {
        const std::size_t found = count[static_cast<std::size_t>(wanted.role)];
        if (found > wanted.most)
            return OrderFault{limit_words(wanted, found),
                              parts_with_role(setup, wanted.role)[wanted.most]};
    }
    return std::nullopt;
}

std::optional<OrderFault> order_fault(const Setup& setup) {
    const auto count = count_by_role(setup);
    for (const Wanted& wanted : wanted_parts) {
        if (count[static_cast<std::size_t>(wanted.role)] < wanted.least)
            return OrderFault{fmt::format("the setup has no {}", wanted.name), 0};
    }
    if (auto fault = too_many_parts(setup)) return fault;
    for (std::size_t i = 1; i < setup.parts.size(); ++i) {
        if (role_of(setup.parts[i]) < role_of(setup.parts[i - 1])) {
            return OrderFault{
                fmt::format("'{}' ({}) cannot come behind '{}' ({}): light goes from the telescope "
                            "through focuser, chain and splitter head to the eyepieces",
                            setup.parts[i].name, kind_of(setup.parts[i].body).label,
                            setup.parts[i - 1].name, kind_of(setup.parts[i - 1].body).label),
                i};
        }
    }
    return std::nullopt;
}

Setup with_valid_choice(Setup setup) {
    const auto valid = [&](std::size_t index, Role role) {
        if (index < setup.parts.size() && role_of(setup.parts[index]) == role) return index;
        const auto found = parts_with_role(setup, role);
        return found.empty() ? std::size_t{0} : found.front();
    };
    setup.chosen.eyepiece = valid(setup.chosen.eyepiece, Role::eyepiece);
    setup.chosen.observer = valid(setup.chosen.observer, Role::observer);
    setup.chosen.target = valid(setup.chosen.target, Role::target);
    return setup;
}

}  // namespace beamfork
