#include "document/drawer.hpp"

namespace beamfork {

std::vector<std::size_t> parts_with_role(const Drawer& drawer, Role role) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < drawer.parts.size(); ++i) {
        if (role_of(drawer.parts[i].part) == role) found.push_back(i);
    }
    return found;
}

std::optional<std::size_t> telescope_of_focuser(const Drawer& drawer, std::size_t focuser) {
    const std::string& name = drawer.parts.at(focuser).sits_on;
    const auto telescopes = parts_with_role(drawer, Role::telescope);
    if (name.empty()) return telescopes.size() == 1 ? std::optional(telescopes[0]) : std::nullopt;
    for (const std::size_t telescope : telescopes) {
        if (drawer.parts[telescope].part.name == name) return telescope;
    }
    return std::nullopt;
}

}  // namespace beamfork
