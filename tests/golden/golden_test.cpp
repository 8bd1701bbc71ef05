// The look of the demos, guarded against change by accident. These pictures prove no number; they were
// accepted by eye. After a change that is meant, look at the new pictures and accept them:
//   BEAMFORK_ACCEPT_GOLDEN=1 build/release/tests/beamfork_tests_golden
#include <cstdlib>
#include <filesystem>

#include "app/open_setup.hpp"
#include "app/picture.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The pictures of the demos are those on the cards of the start page.
const std::filesystem::path demo_folder = BEAMFORK_SOURCE_DIR "/assets/demos";

// On one version of Mesa the pictures are equal to the bit, whatever the build. Another version may place the
// samples of an edge elsewhere: single pixels of an edge then differ by up to half of black to white ...
constexpr int greatest_difference = 128;
// ... but few of them; a part that is missing or a beam of another colour changes the mean by several steps.
constexpr double mean_difference = 0.5;

Image picture_of(const Demo& demo, StandardView view) {
    const auto read = open_demo(demo.asset);
    REQUIRE(read.has_value());
    MakePicture command;
    command.width = 640;
    command.height = 360;
    command.view = view;
    command.options.labels = false;  // the typeface's version is not ours to guard
    auto image = make_picture(read->document, command);
    REQUIRE(image.has_value());
    return *std::move(image);
}

void compare_with_golden(const Image& image,
                         const std::string& name,
                         const std::filesystem::path& folder) {
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

}  // namespace

TEST_CASE("the demos look as they did when somebody last looked at them") {
    const auto all = demos();
    REQUIRE(all.size() >= 5);
    for (const Demo& demo : all)
        compare_with_golden(picture_of(demo, StandardView::overview), demo.name, demo_folder);
}

TEST_CASE("a demo without its shifter looks different enough to be noticed") {
    const auto all = demos();
    const auto golden = read_png(demo_folder / (all[1].name + ".png"));
    REQUIRE(golden.has_value());
    const auto difference = compare(picture_of(all[0], StandardView::overview), *golden);
    REQUIRE(difference.has_value());
    CHECK(difference->mean > mean_difference);
}
