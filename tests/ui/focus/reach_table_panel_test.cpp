#include "parts/eyepiece_pair.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

Setup two_pairs() {
    Setup setup = cured_setup();
    EyepiecePair other;
    other.focal_length = {12.5};
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (role_of(setup.parts[i]) != Role::eyepiece) continue;
        setup.parts.insert(setup.parts.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                           Part{"12.5 mm pair", other, {}, {}});
        break;
    }
    return with_valid_choice(setup);
}

}  // namespace

TEST_CASE("a click on a row of the reach table looks through that pair, in one undo step") {
    Desk desk(two_pairs());
    desk.session.layout.study = "reach_table";
    desk.frame(3);
    const std::size_t before = desk.history().document()->setup.chosen.eyepiece;
    REQUIRE(desk.has("reach_table/row/1"));
    desk.click("reach_table/row/1");
    CHECK(desk.history().document()->setup.chosen.eyepiece == before + 1);
    desk.undo();
    CHECK(desk.history().document()->setup.chosen.eyepiece == before);
}

TEST_CASE("the wide reach table has columns that the narrow one leaves out") {
    Desk desk(two_pairs());
    desk.session.layout.study = "reach_table";
    desk.frame(3);
    CHECK(desk.has("reach_table/column/4"));
    CHECK_FALSE(desk.has("reach_table/column/8"));
    desk.session.layout.study_is_wide = true;
    desk.log.widgets.clear();
    desk.frame(3);
    CHECK(desk.has("reach_table/column/8"));
}
