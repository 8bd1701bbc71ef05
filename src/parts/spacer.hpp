// A spacer, adapter or extension: an empty tube that takes up light path.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct Spacer {
    static constexpr std::string_view key = "spacer";
    static constexpr std::string_view label = "Spacer or adapter";
    static constexpr std::string_view help =
        "An empty tube or ring between two parts; it takes up its own length.";
    static constexpr Role role = Role::chain;

    Millimetres length{10};
    Millimetres clear_diameter{42};
    Mount mount{};

    bool operator==(const Spacer&) const = default;
    static std::vector<Field<Spacer>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const { return std::nullopt; }
};

}  // namespace beamfork
