#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "base/assets.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::string bytes_of(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST_CASE("every embedded file holds the bytes of the file in the tree") {
    const std::filesystem::path top = BEAMFORK_SOURCE_DIR;
    int compared = 0;
    for (const std::string_view name : asset_names()) {
        if (name.starts_with("fonts/")) continue;  // comes from the system, not from the tree
        CAPTURE(name);
        CHECK(std::filesystem::is_regular_file(top / name));
        CHECK(asset(name) == bytes_of(top / name));
        ++compared;
    }
    CHECK(compared > 0);
}

TEST_CASE("the typeface is carried along as OpenType") {
    // The OpenType specification, "Table Directory": a font with CFF outlines begins with 'OTTO', one with
    // TrueType outlines with 00 01 00 00.
    for (const auto* name : {"fonts/regular.otf", "fonts/bold.otf"}) {
        const auto font = asset(name);
        REQUIRE(font.has_value());
        const auto tag = font->substr(0, 4);
        CHECK((tag == "OTTO" || tag == std::string_view("\0\1\0\0", 4)));
    }
    CHECK(asset("fonts/regular.otf") != asset("fonts/bold.otf"));
}

TEST_CASE(
    "a name that was not embedded gives nothing, and a folder lists its own files only, sorted") {
    CHECK_FALSE(asset("assets/no_such_file.toml").has_value());
    CHECK_FALSE(asset("").has_value());
    const auto fonts = asset_names("fonts/");
    CHECK(fonts == std::vector<std::string_view>{"fonts/bold.otf", "fonts/regular.otf"});
    const auto all = asset_names();
    CHECK(std::ranges::is_sorted(all));
    CHECK(std::ranges::adjacent_find(all) == all.end());
}
