#include "desk/open_setup.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <tuple>

#include "base/assets.hpp"
#include "base/text.hpp"
#include "document/atomic_file.hpp"
#include "document/setup_in_page.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

Result<ReadSetup> open_demo(const std::string& asset_name) {
    const auto text = asset(asset_name);
    if (!text) return fail(ErrorCode::not_found, fmt::format("no demo '{}'", asset_name));
    return read_setup(*text, asset_name);
}

namespace {

std::vector<Demo> read_demos() {
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

constexpr std::size_t largest_page = 4 * largest_file;

Result<ReadSetup> setup_of_page_or_file(const std::string& bytes, const std::string& name) {
    if (!is_page(bytes)) return read_setup(bytes, name);
    const auto text = setup_in_page(bytes);
    if (text) return read_setup(*text, name);
    return fail(ErrorCode::bad_input,
                "expected a page written by 'beamfork sheet', found no setup in this one",
                {name, 0});
}

}  // namespace

const std::vector<Demo>& demos() {
    static const std::vector<Demo> shipped = read_demos();
    return shipped;
}

bool names_a_setup_file(const std::string& name) {
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(name, ignored)) return false;
    const auto bytes = read_file(name, largest_page);
    return !bytes || !is_page(*bytes);
}

Result<ReadSetup> open_named(const std::string& name) {
    if (names_a_file(name)) {
        return read_file(name, largest_page).and_then([&](const std::string& bytes) {
            return setup_of_page_or_file(bytes, name);
        });
    }
    std::vector<std::string> names;
    for (const Demo& demo : demos()) {
        const bool is_number = name == demo.name.substr(0, demo.name.find('-'));
        if (name.empty() || demo.name == name || is_number) return open_demo(demo.asset);
        names.push_back(demo.name);
    }
    return fail(ErrorCode::not_found,
                fmt::format("no such file, and no demo of that name ({}){}", fmt::join(names, ", "),
                            did_you_mean(name, names)),
                {name, 0});
}

}  // namespace beamfork
