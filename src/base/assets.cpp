#include "base/assets.hpp"

#include <algorithm>

#include "base/asset_table.hpp"

namespace beamfork {

std::optional<std::string_view> asset(std::string_view name) {
    const auto table = embedded_assets();
    const auto found = std::ranges::find(table, name, &EmbeddedAsset::name);
    if (found == table.end()) return std::nullopt;
    return *found->bytes;
}

std::vector<std::string_view> asset_names(std::string_view folder) {
    std::vector<std::string_view> names;
    for (const EmbeddedAsset& each : embedded_assets())
        if (each.name.starts_with(folder)) names.push_back(each.name);
    std::ranges::sort(names);
    return names;
}

}  // namespace beamfork
