// A focuser: a drawtube that slides in the telescope's tube and carries everything behind it.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct Focuser {
    static constexpr std::string_view key = "focuser";
    static constexpr std::string_view label = "Focuser";
    static constexpr std::string_view help =
        "The drawtube slides in and out to bring the image onto the eyepieces' field stops.";
    static constexpr Role role = Role::focuser;

    Millimetres travel{80};
    Millimetres drawtube_diameter{48};   ///< inner, clear
    Millimetres drawtube_length{110};    ///< rear face to front end
    std::optional<Millimetres> held_at;  ///< where the user holds it instead of focusing
    std::optional<Grams> rated_load;     ///< what its maker says it carries
    Mount mount{};

    bool operator==(const Focuser&) const = default;
    static std::vector<Field<Focuser>> fields();
    /// Entry at the rear face's place when racked in; exit at the rear face's present place.
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
};

}  // namespace beamfork
