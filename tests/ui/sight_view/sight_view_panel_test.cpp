#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE(
    "the panel asks for the subject and the layout that were chosen, and for nothing while it "
    "is hidden") {
    Desk desk;
    REQUIRE(desk.last.sight.has_value());  // it stands in the window as that opens
    CHECK(desk.last.sight->scene.subject == SightSubject::moon);
    desk.session.layout.study_is_wide = true;
    desk.frame(3);
    desk.click("sight/subject");
    desk.click("sight/subject/2");
    CHECK(desk.last.sight->scene.subject == SightSubject::planet);
    CHECK(desk.has("sight/planet"));
    desk.click("sight/layout/One and two");
    CHECK(desk.last.sight->layout == SightLayout::one_and_two);
    desk.drag(desk.place("sight/closer", 0.02F), desk.place("sight/closer", 0.8F));
    const double closer = desk.last.sight->closer;
    CHECK(closer > 1);
    desk.click("sight/whole");
    CHECK(desk.last.sight->closer == 1);
    CHECK(desk.edits.empty());
    desk.session.layout.study = "magnification";
    desk.frame(2);
    CHECK_FALSE(desk.last.sight.has_value());
}
