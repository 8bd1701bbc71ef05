// “Describe my setup” in the window.
#include "parts/newtonian.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

void open_questions(Desk& desk) {
    desk.key(ImGuiKey_N, {ImGuiMod_Ctrl, ImGuiMod_Shift});
    desk.frame(2);
}

}  // namespace

TEST_CASE("without any answer a setup of usual values is asked for") {
    Desk desk;
    open_questions(desk);
    desk.click("describe/make");
    const auto asked = desk.asked<StartSetup>();
    REQUIRE(asked.size() == 1);
    CHECK((asked.front().setup == *described_setup({})));
    desk.frame(2);
    CHECK_FALSE(desk.has("describe/make"));
}

TEST_CASE("what is typed is taken, in other units too, and kinds are chosen") {
    Desk desk;
    open_questions(desk);
    desk.click("describe/telescope/Mirror, eyepiece at the side");
    desk.retype("describe/aperture", "8 in", ImGuiKey_Tab);
    desk.click("describe/make");
    const auto asked = desk.asked<StartSetup>();
    REQUIRE(asked.size() == 1);
    const auto* telescope = find_part<Newtonian>(asked.front().setup);
    REQUIRE(telescope != nullptr);
    CHECK(near(telescope->aperture.value, 203.2, rounding));  // 1 in = 25.4 mm
}

TEST_CASE("an answer that cannot be is said in a sentence and nothing is lost") {
    Desk desk;
    open_questions(desk);
    desk.retype("describe/back_focus", "far", ImGuiKey_Tab);
    desk.click("describe/make");
    CHECK(desk.asked<StartSetup>().empty());
    CHECK(desk.widget("describe/error").label.find("Back focus") != std::string::npos);
    desk.retype("describe/back_focus", "90", ImGuiKey_Tab);
    desk.click("describe/make");
    CHECK(desk.asked<StartSetup>().size() == 1);
}

TEST_CASE("the questions fit into a small window") {
    Desk desk(short_setup(), {800, 600});
    open_questions(desk);
    for (const char* name :
         {"describe/telescope/Lens", "describe/pupil_distance", "describe/make"}) {
        const LoggedWidget& widget = desk.widget(name);
        CHECK(widget.low.y >= 0);
        CHECK(widget.high.y <= 600);
        CHECK(widget.low.x >= 0);
        CHECK(widget.high.x <= 800);
    }
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("describe/make"));
}

TEST_CASE("the welcome line offers the questions") {
    Desk desk;
    desk.session.welcome_dismissed = false;
    desk.frame(3);
    desk.click("notice_bar/describe");
    desk.frame(2);
    CHECK(desk.has("describe/make"));
}
