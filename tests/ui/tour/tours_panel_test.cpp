#include "parts/focuser.hpp"
#include "parts/splitter_head.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

void show_tours(Desk& desk) {
    desk.session.layout.study = "tours";
    desk.session.layout.study_is_wide = true;
    desk.frame(3);
}

const std::vector<Tour>& tours_of(const Desk& desk) { return desk.history().document()->tours; }

void new_tour(Desk& desk, const std::string& from) {
    desk.click("tours/new");
    desk.click("tours/new/" + from);
    desk.frame(3);
}

}  // namespace

TEST_CASE(
    "a tour begins as a copy of a built-in one, is written, and each change is undone alone") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "one-beam-becomes-two");
    REQUIRE(tours_of(desk).size() == 1);
    CHECK(tours_of(desk)[0].name == "my-one-beam-becomes-two");
    const auto steps = tours_of(desk)[0].steps;
    REQUIRE(steps.size() == 5);

    desk.click("tours/step/1");
    desk.click("tours/step/up");
    CHECK(tours_of(desk)[0].steps[0] == steps[1]);
    desk.click("tours/step/remove");
    CHECK(tours_of(desk)[0].steps.size() == 4);
    desk.click("tours/step/add");
    REQUIRE(tours_of(desk)[0].steps.size() == 5);
    CHECK(tours_of(desk)[0].steps[1].camera.has_value());
    desk.undo();
    desk.undo();
    desk.undo();
    CHECK(tours_of(desk)[0].steps == steps);
}

TEST_CASE("a caption with a bad quote is kept as typed until it is mended") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "view");
    REQUIRE(tours_of(desk).size() == 1);
    const std::string before = tours_of(desk)[0].steps[0].caption;
    desk.click("tours/caption");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("It is {focus.shortfal}");
    desk.click("tours/title");
    CHECK(tours_of(desk)[0].steps[0].caption == before);
    REQUIRE(desk.has("tours/refused"));
    CHECK(desk.widget("tours/refused").label == "It is {focus.shortfal}");
    desk.click("tours/caption");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("It is {focus.shortfall}");
    desk.click("tours/title");
    CHECK(tours_of(desk)[0].steps[0].caption == "It is {focus.shortfall}");
    CHECK_FALSE(desk.has("tours/refused"));
    CHECK_FALSE(desk.bench.message().is_error);
}

TEST_CASE("notes are taken when the entry is left") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "view");
    desk.click("tours/notes");
    desk.type("Wait here.");
    desk.click("tours/title");
    CHECK(tours_of(desk)[0].steps[0].notes == "Wait here.");
}

TEST_CASE("a tour of one's own is told by its button, with its caption filled") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "one-beam-becomes-two");
    desk.click("tours/tell");
    REQUIRE(desk.transient.is_giving_talk());
    CHECK(desk.widget("talk/caption").label.find('{') == std::string::npos);
    desk.key(ImGuiKey_Escape);
    desk.click("tours/remove");
    CHECK(tours_of(desk).empty());
}

TEST_CASE(
    "a bad caption outlives a visit to another step, and says what is wrong wherever one is") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "one-beam-becomes-two");
    desk.click("tours/step/0");
    desk.click("tours/caption");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("It is {focus.shortfal}");
    desk.click("tours/step/1");
    CHECK_FALSE(desk.has("tours/refused"));
    CHECK(desk.widget("tours/step/0").tooltip.find("{focus.shortfall}") != std::string::npos);
    // It goes with its step when steps are moved.
    desk.click("tours/step/up");
    desk.click("tours/step/1");
    REQUIRE(desk.has("tours/refused"));
    CHECK(desk.widget("tours/refused").label == "It is {focus.shortfal}");
    desk.click("tours/caption");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("It is {focus.shortfall}");
    desk.click("tours/step/0");
    desk.frame(3);
    CHECK(tours_of(desk)[0].steps[1].caption == "It is {focus.shortfall}");
    CHECK_FALSE(desk.bench.message().is_error);
}

TEST_CASE("parts are lit by ticks, each undone alone, and all ticks are none") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "view");
    const auto lit = [&] { return tours_of(desk)[0].steps[0].lit; };
    CHECK(lit().empty());
    const std::string head = desk.setup().parts[desk.index<SplitterHead>()].name;
    desk.click("tours/lit/" + std::to_string(desk.index<SplitterHead>()));
    CHECK(lit() == std::vector<std::string>{"part: " + head});
    desk.click("tours/lit/" + std::to_string(desk.index<Focuser>()));
    CHECK(lit().size() == 2);
    desk.undo();
    CHECK(lit().size() == 1);
    desk.frame(2);
    desk.click("tours/lit/" + std::to_string(desk.index<SplitterHead>()));
    CHECK(lit().empty());
}

TEST_CASE("a question is put to a step, its texts are kept until they can be taken, its right "
          "answer follows a value") {
    Desk desk;
    show_tours(desk);
    new_tour(desk, "view");
    desk.click("tours/asks");
    const auto asks = [&] { return tours_of(desk)[0].steps[0].asks; };
    REQUIRE(asks());
    CHECK(asks()->right_value == "{focus.verdict}");
    desk.frame(2);
    // The sample is short of focus.
    CHECK(desk.widget("tours/verdict").label.find("falls short") != std::string::npos);
    desk.click("tours/answer/1");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("{head.pth}");
    desk.click("tours/title");
    CHECK(asks()->answers[0] == "Yes");
    REQUIRE(desk.has("tours/answer/1/refused"));
    desk.click("tours/answer/1");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("{head.path}");
    desk.click("tours/title");
    CHECK(asks()->answers[0] == "{head.path}");
    desk.click("tours/right");
    desk.click("tours/right/head.path");
    desk.frame(2);
    CHECK(asks()->right_value == "{head.path}");
    desk.click("tours/answer/remove");
    CHECK(asks()->answers.size() == 2);
    desk.click("tours/asks");
    CHECK_FALSE(asks());
    desk.undo();
    CHECK(asks()->answers.size() == 2);
    CHECK_FALSE(desk.bench.message().is_error);
}
