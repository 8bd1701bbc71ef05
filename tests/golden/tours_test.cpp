// The look of a tour's steps, as golden_test.cpp guards the demos': what is lit while the rest fades, the room asked
// and answered.
#include "app/export/picture.hpp"
#include "desk/open_setup.hpp"
#include "golden/compare_golden.hpp"

using namespace beamfork;

namespace {

Image step_picture(const std::string& tour, int step, bool is_revealed) {
    const auto read = open_named("2-shifter-cures-it");
    REQUIRE(read.has_value());
    MakePicture command;
    command.width = 640;
    command.height = 360;
    command.tour = tour;
    command.step = step;
    command.is_revealed = is_revealed;
    auto image = make_picture(read->document, command);
    REQUIRE_MESSAGE(image.has_value(), (image ? "" : to_text(image.error())));
    return *std::move(image);
}

}  // namespace

TEST_CASE("a step that lights one part") {
    compare_with_golden(step_picture("one-beam-becomes-two", 2, false), "tour-lit");
}

TEST_CASE("a step that asks the room, before and after the answer") {
    const Image asked = step_picture("what-a-shifter-does", 2, false);
    const Image answered = step_picture("what-a-shifter-does", 2, true);
    compare_with_golden(asked, "tour-asked");
    compare_with_golden(answered, "tour-answered");
    // The light comes with the answer: both could not pass for each other.
    const auto difference = compare(asked, answered);
    REQUIRE(difference.has_value());
    CHECK(difference->mean > mean_difference);
}
