#include "app/open_setup.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <tuple>

#include "base/assets.hpp"
#include "base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

Result<ReadSetup> open_demo(const std::string& asset_name) {
    const auto text = asset(asset_name);
    if (!text) return fail(ErrorCode::not_found, fmt::format("no demo '{}'", asset_name));
    return read_setup(*text, asset_name);
}

std::vector<Demo> demos() {
    constexpr std::string_view folder = "assets/demos/";
    constexpr std::string_view ending = ".train.toml";
    std::vector<Demo> found;
    for (const std::string_view name : asset_names()) {
        if (!name.starts_with(folder) || !name.ends_with(ending)) continue;
        const auto read = open_demo(std::string(name));
        if (!read) continue;
        const auto stem = name.substr(folder.size(), name.size() - folder.size() - ending.size());
        found.push_back({std::string(stem), std::string(name), read->document.setup.title,
                         read->document.setup.story});
    }
    // By the number that each name begins with, so that the tenth comes behind the ninth.
    const auto number = [](const Demo& demo) {
        return std::strtol(demo.name.c_str(), nullptr, 10);
    };
    std::sort(found.begin(), found.end(), [&](const Demo& a, const Demo& b) {
        return std::tuple(number(a), a.name) < std::tuple(number(b), b.name);
    });
    return found;
}

bool names_a_file(const std::string& name) {
    std::error_code ignored;
    return !name.empty() && std::filesystem::exists(name, ignored);
}

Result<ReadSetup> open_named(const std::string& name) {
    if (names_a_file(name)) return load_file(name);
    std::vector<std::string> names;
    for (const Demo& demo : demos()) {
        if (name.empty() || demo.name == name) return open_demo(demo.asset);
        names.push_back(demo.name);
    }
    const auto near = nearest_name(name, names);
    return fail(ErrorCode::not_found,
                fmt::format("no such file, and no demo of that name ({}){}", fmt::join(names, ", "),
                            near ? "; did you mean '" + *near + "'?" : ""),
                {name, 0});
}

}  // namespace beamfork
