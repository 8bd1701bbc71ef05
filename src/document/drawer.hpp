// A drawer of parts, from which setups can be built: telescopes with their focusers, what screws between them and the
// eyes, who observes and what is looked at. A plain value.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/units.hpp"
#include "document/extras.hpp"
#include "parts/part.hpp"

namespace beamfork {

/// In the user's own currency: 90 "talers". Prices of two currencies cannot be compared.
struct Price {
    double amount = 0;
    std::string currency;
    bool operator==(const Price&) const = default;
};

struct DrawerPart {
    Part part;
    bool wanted = false;  ///< not owned yet
    std::optional<Price> price{};
    std::string note{};
    /// A focuser alone: the telescope it sits on, whose back focus is stated with its rear face racked in; may be left
    /// open where there is one telescope.
    std::string sits_on{};
    /// A focuser alone: how much lower it is than the one with which the telescope's back focus is stated. It gives as
    /// much light path back.
    Millimetres lower_by{0};
    bool operator==(const DrawerPart&) const = default;
};

/// Names differ within each role; every focuser sits on a telescope of the drawer.
struct Drawer {
    std::string title;
    std::string story;
    std::vector<DrawerPart> parts;  ///< in the order of the file; observers and targets, too
    Extras top{};
    std::string last_lines{};  ///< comment lines at the end of the file
    bool operator==(const Drawer&) const = default;
};

/// Indices of all parts with that role, in order.
std::vector<std::size_t> parts_with_role(const Drawer& drawer, Role role);

/// The index of the telescope that the focuser at that index sits on; nothing where the drawer has no such telescope, or
/// several and it is not said which.
std::optional<std::size_t> telescope_of_focuser(const Drawer& drawer, std::size_t focuser);

}  // namespace beamfork
