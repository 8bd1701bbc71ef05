// A filter: a plane plate of glass in a ring.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct FilterPlate {
    static constexpr std::string_view key = "filter";
    static constexpr std::string_view label = "Filter";
    static constexpr std::string_view help =
        "A plane glass plate; it moves the image outward by about a third of its thickness.";
    static constexpr Role role = Role::chain;

    Millimetres thickness{2};
    Millimetres ring_length{6};  ///< what the ring adds between its neighbours
    Millimetres clear_diameter{26};
    Millimetres seat_depth{0};  ///< how far before its place in the train the plate really sits
    std::string glass = "N-BK7";
    std::optional<double> transmission;  ///< percent, of the whole filter as stated
    AntiReflection coating = AntiReflection::multi_layer;
    Mount mount{};

    bool operator==(const FilterPlate&) const = default;
    static std::vector<Field<FilterPlate>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
};

}  // namespace beamfork
