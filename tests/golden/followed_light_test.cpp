// The look of light that is followed: painted, in motion, and the parts pulled apart. Words of the key are in these
// pictures, as in modes_test.cpp.
#include "app/export/picture.hpp"
#include "desk/open_setup.hpp"
#include "golden/compare_golden.hpp"

using namespace beamfork;

namespace {

void check_look(const std::string& name, const std::string& demo, const ViewOptions& options) {
    const auto read = open_named(demo);
    REQUIRE(read.has_value());
    MakePicture command;
    command.width = 640;
    command.height = 360;
    command.view = StandardView::overview;
    command.options = options;
    command.options.labels = false;
    const auto image = make_picture(read->document, command);
    REQUIRE(image.has_value());
    compare_with_golden(*image, "follow-" + name);
}

}  // namespace

TEST_CASE("the objective painted, where much is clipped, on dark and on light ground") {
    check_look("painted", "3-fast-and-wide", {.paint_pupil = true});
    check_look("painted-white", "3-fast-and-wide", {.light_ground = true, .paint_pupil = true});
    check_look("painted-night", "3-fast-and-wide", {.night = true, .paint_pupil = true});
}

TEST_CASE("a packet of light just divided, and one that has come to both eyes") {
    for (const auto& [name, front_mm] : {std::pair{"divided", 20.0F}, {"arrived", 152.0F}}) {
        check_look(name, "2-shifter-cures-it",
                   {.light_moves = true, .light_is_held = true, .light_front_mm = front_mm});
    }
}

TEST_CASE("the parts pulled apart") { check_look("apart", "2-shifter-cures-it", {.apart = 1}); }
