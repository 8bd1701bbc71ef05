#include "parts/splitter_head.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"
#include "ui/talk/talk.hpp"
#include "ui/window_actions.hpp"

using namespace beamfork;

namespace {

const char* const first_tour = "talk/tour/one-beam-becomes-two";

void give_talk(Desk& desk) {
    desk.key(ImGuiKey_F5);
    REQUIRE(desk.has(first_tour));
    desk.click(first_tour);
    REQUIRE(desk.transient.is_giving_talk());
}

void land(Desk& desk) { desk.frame(150); }  // longer than any flight

std::string caption(Desk& desk) { return desk.widget("talk/caption").label; }

}  // namespace

TEST_CASE(
    "a talk fills the window, goes on and back by clicker and arrows, and leaves all as it was") {
    Desk desk;
    const Camera before = desk.session.pose.camera;
    give_talk(desk);
    desk.frame(2);
    CHECK_FALSE(desk.has("train/heading"));
    CHECK_FALSE(desk.has("view/side"));
    const std::string first = caption(desk);
    CHECK(first.find("mm") != std::string::npos);  // the aperture is quoted, not named
    desk.key(ImGuiKey_PageDown);
    const std::string second = caption(desk);
    CHECK(second != first);
    desk.key(ImGuiKey_PageUp);
    CHECK(caption(desk) == first);
    desk.key(ImGuiKey_LeftArrow);  // there is none before
    CHECK(caption(desk) == first);
    desk.key(ImGuiKey_Space);
    CHECK(caption(desk) == second);
    for (int i = 0; i < 20; ++i)
        desk.key(ImGuiKey_RightArrow);
    const std::string last = caption(desk);
    desk.key(ImGuiKey_RightArrow);
    CHECK(caption(desk) == last);
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.transient.is_giving_talk());
    land(desk);
    CHECK(desk.session.pose.camera == before);
    CHECK(desk.has("view/side"));
    CHECK(desk.edits.empty());
}

TEST_CASE("the camera flies to each step's view and stays where the speaker has turned it") {
    Desk desk;
    give_talk(desk);
    land(desk);
    const SceneArea area = desk.last.picture.scene;
    desk.key(ImGuiKey_RightArrow);
    CHECK(desk.last.pace.animating);
    land(desk);
    CHECK_FALSE(desk.last.pace.animating);
    const Camera there = desk.session.pose.camera;
    const LoggedWidget picture = desk.widget("talk/picture");
    CHECK(near(area.width, picture.high.x - picture.low.x, 0.51));  // whole pixels
    desk.drag(desk.place("talk/picture", 0.5F, 0.5F), desk.place("talk/picture", 0.4F, 0.5F));
    land(desk);
    CHECK(desk.session.pose.camera.yaw_rad != there.yaw_rad);
    desk.key(ImGuiKey_LeftArrow);
    desk.key(ImGuiKey_RightArrow);
    land(desk);
    CHECK(desk.session.pose.camera == there);
}

TEST_CASE("the speaker's notes are asked for with the time since the talk began") {
    Desk desk;
    give_talk(desk);
    CHECK_FALSE(desk.last.speaker);
    desk.key(ImGuiKey_S);
    REQUIRE(desk.last.speaker);
    const auto tours = built_in_tours(desk.setup(), desk.report());
    CHECK(desk.last.speaker->notes == tours.front().steps.front().notes);
    CHECK(desk.last.speaker->next.find('{') == std::string::npos);
    REQUIRE(desk.last.pace.wake_in_s);
    CHECK(*desk.last.pace.wake_in_s <= 1);
    const double before = desk.last.speaker->elapsed_s;
    desk.frame(60);
    CHECK(near(desk.last.speaker->elapsed_s - before, 1, 1e-3));  // 60 frames of 1/60 s
    desk.key(ImGuiKey_S);
    CHECK_FALSE(desk.last.speaker);
}

TEST_CASE("buttons appear when the mouse moves, go when it rests, and do what the keys do") {
    Desk desk;
    give_talk(desk);
    desk.frame(600);
    CHECK_FALSE(desk.has("talk/button/forward"));
    const std::string first = caption(desk);
    desk.move(desk.place("talk/picture", 0.3F, 0.3F));
    REQUIRE(desk.has("talk/button/forward"));
    const LoggedWidget disc = desk.widget("talk/button/forward");
    CHECK(disc.high.x - disc.low.x >= 44);  // WCAG 2.2, success criterion 2.5.5: 44 pixels
    desk.click("talk/button/forward");
    CHECK(caption(desk) != first);
    desk.move(desk.place("talk/picture", 0.3F, 0.3F));
    desk.click("talk/button/back");
    CHECK(caption(desk) == first);
    desk.move(desk.place("talk/picture", 0.3F, 0.3F));
    desk.click("talk/button/leave");
    CHECK_FALSE(desk.transient.is_giving_talk());
}

TEST_CASE("a clock reads minutes and seconds, and hours from the first on") {
    CHECK(clock_text(0) == "0:00");
    CHECK(clock_text(65.9) == "1:05");
    CHECK(clock_text(3723) == "1:02:03");
    CHECK(clock_text(-1) == "0:00");
}

TEST_CASE("closing the window during a talk ends it and asks about unsaved work as ever") {
    Desk desk;
    give_talk(desk);
    desk.events.close_asked = true;
    desk.frame(3);
    CHECK_FALSE(desk.transient.is_giving_talk());
    CHECK(desk.asked<Quit>().size() == 1);
}

TEST_CASE("F5 and Enter tell the first tour") {
    Desk desk;
    desk.key(ImGuiKey_F5);
    desk.key(ImGuiKey_Enter);
    CHECK(desk.transient.is_giving_talk());
    CHECK_FALSE(desk.has("talk/cancel"));
}

namespace {

// The first tour ends with a question: "Which eye gets more light?"
void go_to_question(Desk& desk) {
    give_talk(desk);
    for (int i = 0; i < 10 && !desk.has("talk/card/1"); ++i) {
        desk.key(ImGuiKey_PageDown);
        desk.frame(2);
    }
    REQUIRE(desk.has("talk/card/3"));
    land(desk);
}

}  // namespace

TEST_CASE("a clicker's forward first tells the answer, then goes on") {
    Desk desk;
    desk.key(ImGuiKey_F5);
    desk.click("talk/tour/why-it-will-not-focus");
    land(desk);
    for (int step = 0; step < 12 && caption(desk) != "Will it come to focus?"; ++step) {
        desk.key(ImGuiKey_PageDown);
        land(desk);
    }
    const std::string question = caption(desk);
    CHECK(question == "Will it come to focus?");
    CHECK(desk.last.picture.emphasis.results == 0);
    desk.key(ImGuiKey_PageDown);
    const std::string result = caption(desk);
    CHECK(result != question);
    CHECK(result.find("mm") != std::string::npos);
    CHECK(desk.last.picture.emphasis.results < 1);
    CHECK(desk.last.pace.animating);
    land(desk);
    CHECK(desk.last.picture.emphasis.results == 1);
    desk.key(ImGuiKey_PageDown);
    CHECK(caption(desk) != result);
    desk.key(ImGuiKey_PageUp);
    CHECK(caption(desk) == question);  // asked anew
}

TEST_CASE("the room's answer is taken by key and by mouse, once") {
    Desk desk;
    go_to_question(desk);
    const std::string question = caption(desk);
    desk.key(ImGuiKey_2);
    REQUIRE(desk.transient.state().talk.talk->chosen);
    CHECK(*desk.transient.state().talk.talk->chosen == 1);
    CHECK(caption(desk) != question);
    desk.key(ImGuiKey_1);
    CHECK(*desk.transient.state().talk.talk->chosen == 1);
    desk.key(ImGuiKey_Escape);

    go_to_question(desk);
    desk.click("talk/card/3");
    CHECK(*desk.transient.state().talk.talk->chosen == 2);
    desk.key(ImGuiKey_PageUp);
    desk.key(ImGuiKey_3);  // nothing is asked there
    CHECK_FALSE(desk.transient.state().talk.talk->chosen);
}

TEST_CASE("before the answer no name tells a result, and what has faded bears no name") {
    Desk desk;
    go_to_question(desk);
    const Emphasis asked = desk.last.picture.emphasis;
    CHECK(asked.results == 0);
    desk.key(ImGuiKey_Escape);
    give_talk(desk);
    desk.key(ImGuiKey_PageDown);
    CHECK(desk.last.picture.emphasis.faded.size() == desk.setup().parts.size());
    land(desk);
    for (std::size_t i = 0; i < desk.setup().parts.size(); ++i) {
        const bool is_head = desk.setup().parts[i].body.is<SplitterHead>();
        CHECK(desk.last.picture.emphasis.fade_of(static_cast<int>(i)) == (is_head ? 0.0F : 1.0F));
    }
    desk.key(ImGuiKey_Escape);
    desk.frame(2);
    CHECK(desk.last.picture.emphasis == Emphasis{});
}

TEST_CASE("the speaker reads the question with its right answer before the room does") {
    Desk desk;
    go_to_question(desk);
    desk.key(ImGuiKey_S);
    REQUIRE(desk.last.speaker);
    REQUIRE(desk.last.speaker->words.asked);
    CHECK(desk.last.speaker->words.asked->right.has_value());
}

TEST_CASE("while the right button dims all but what is pointed at, no button shines beside it") {
    Desk desk;
    give_talk(desk);
    land(desk);
    desk.move(desk.place("talk/picture", 0.3F, 0.3F));
    REQUIRE(desk.has("talk/button/forward"));
    const Camera before = desk.session.pose.camera;
    desk.press(1);
    desk.move(desk.place("talk/picture", 0.5F, 0.5F));
    CHECK_FALSE(desk.has("talk/button/forward"));
    desk.release(1);
    CHECK(desk.has("talk/button/forward"));
    CHECK(desk.session.pose.camera == before);
}

TEST_CASE(
    "a step shows what it asks for, the speaker's keys change it, and the end takes it back") {
    Desk desk;
    desk.session.view.paint_pupil = true;  // as the talk began
    give_talk(desk);
    const auto tours = all_tours(*desk.history().document(), desk.report());
    const Tour& tour = tours.front();
    REQUIRE(tour.name == "one-beam-becomes-two");
    std::size_t moving = 0;
    for (std::size_t step = 0; step < tour.steps.size(); ++step) {
        const bool moves = tour.steps[step].show.contains(TourShow::motion);
        CHECK(desk.session.view.light_moves == moves);
        CHECK(desk.session.view.paint_pupil);
        moving += moves ? 1 : 0;
        desk.key(ImGuiKey_M);
        CHECK(desk.session.view.light_moves == !moves);
        desk.key(ImGuiKey_RightArrow);
    }
    CHECK(moving >= 1);
    desk.key(ImGuiKey_P);
    desk.key(ImGuiKey_X);
    land(desk);
    CHECK(desk.session.view.apart == 1);
    CHECK_FALSE(desk.session.view.paint_pupil);
    desk.key(ImGuiKey_Escape);
    land(desk);
    CHECK(desk.session.view.paint_pupil);
    CHECK_FALSE(desk.session.view.light_moves);
    CHECK(desk.session.view.apart == 0);
}
