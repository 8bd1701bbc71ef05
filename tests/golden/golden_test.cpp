// The look of the demos, guarded against change by accident. These pictures prove no number; they were
// accepted by eye. After a change that is meant, look at the new pictures and accept them:
//   BEAMFORK_ACCEPT_GOLDEN=1 build/release/tests/beamfork_tests_golden
#include "app/export/picture.hpp"
#include "desk/open_setup.hpp"
#include "golden/compare_golden.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The pictures of the demos are those on the cards of the start page.
const std::filesystem::path demo_folder = BEAMFORK_SOURCE_DIR "/assets/demos";

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
