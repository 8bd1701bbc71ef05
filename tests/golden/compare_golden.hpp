// A picture against the one that was accepted by eye; see golden_test.cpp.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

#include "render/image.hpp"

#include <doctest/doctest.h>

namespace beamfork {

inline const std::filesystem::path golden_folder = BEAMFORK_SOURCE_DIR "/tests/golden";

// On one version of Mesa the pictures are equal to the bit, whatever the build. Another version may place the
// samples of an edge elsewhere: single pixels of an edge then differ by up to half of black to white ...
inline constexpr int greatest_difference = 128;
// ... but few of them; a part that is missing or a beam of another colour changes the mean by several steps.
inline constexpr double mean_difference = 0.5;

inline void compare_with_golden(const Image& image,
                                const std::string& name,
                                const std::filesystem::path& folder = golden_folder) {
    const auto golden_file = folder / (name + ".png");
    if (std::getenv("BEAMFORK_ACCEPT_GOLDEN") != nullptr) {
        REQUIRE(write_png(image, golden_file).has_value());
        return;
    }
    const auto golden = read_png(golden_file);
    REQUIRE(golden.has_value());
    const auto difference = compare(image, *golden);
    REQUIRE(difference.has_value());
    const bool is_alike =
        difference->greatest <= greatest_difference && difference->mean <= mean_difference;
    if (!is_alike) {
        const auto out = std::filesystem::temp_directory_path();
        CHECK(write_png(image, out / (name + "-actual.png")).has_value());
        CHECK(write_png(difference_picture(image, *golden), out / (name + "-difference.png"))
                  .has_value());
    }
    CAPTURE(name);
    CAPTURE(difference->greatest);
    CAPTURE(difference->mean);
    CHECK(is_alike);
}

}  // namespace beamfork
