// What is looked at: the sky, or something at a distance on the ground.
#pragma once

#include "parts/kind.hpp"

namespace beamfork {

struct Target {
    static constexpr std::string_view key = "target";
    static constexpr std::string_view label = "Target";
    static constexpr std::string_view help = "What is looked at; near targets focus farther out.";
    static constexpr Role role = Role::target;

    std::optional<Metres>
        distance;  ///< from the front lens or main mirror's rim; unstated: infinitely far

    bool operator==(const Target&) const = default;
    static std::vector<Field<Target>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext&) const { return {}; }
    [[nodiscard]] std::optional<std::string> contradiction() const { return std::nullopt; }
};

}  // namespace beamfork
