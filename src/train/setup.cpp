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
    bool exactly_one;
};

constexpr std::array wanted_parts{
    Wanted{Role::telescope, "telescope", true},    Wanted{Role::focuser, "focuser", true},
    Wanted{Role::splitter, "splitter head", true}, Wanted{Role::eyepiece, "eyepiece pair", false},
    Wanted{Role::observer, "observer", false},     Wanted{Role::target, "target", false},
};

}  // namespace

std::optional<OrderFault> order_fault(const Setup& setup) {
    std::array<std::size_t, role_count> count{};
    for (const Part& part : setup.parts)
        ++count[static_cast<std::size_t>(role_of(part))];
    for (const Wanted& wanted : wanted_parts) {
        const std::size_t found = count[static_cast<std::size_t>(wanted.role)];
        if (found == 0) return OrderFault{fmt::format("the setup has no {}", wanted.name), 0};
        if (wanted.exactly_one && found > 1) {
            return OrderFault{
                fmt::format("the setup has {} {}s; it can have only one", found, wanted.name),
                parts_with_role(setup, wanted.role)[1]};
        }
    }
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
