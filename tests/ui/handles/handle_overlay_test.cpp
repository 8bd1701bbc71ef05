#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"
#include "ui/handles/handle_overlay.hpp"

using namespace beamfork;

namespace {

std::string knob_on(std::size_t part, int index = 0) {
    return "handle/" + std::to_string(part) + "/" + std::to_string(index);
}

// Looks at the part from the side, or from elsewhere; its knob is drawn because it is selected.
void look_at(Desk& desk, std::size_t part, float yaw = 0, float pitch = 0) {
    desk.select(part);
    const Handle handle = handles_of(desk.setup(), desk.report(), part).at(0);
    Camera camera;
    camera.target = glm::vec3(handle.place());
    camera.distance_mm = 420;
    camera.yaw_rad = yaw;
    camera.pitch_rad = pitch;
    desk.session.pose.camera = camera;
    desk.frame(2);
}

Setup with_long_adapter() {
    Setup setup = short_setup();
    setup.parts[2].body.get<Spacer>().length = {20};
    return setup;
}

// Where the place that the knob moves is seen, in pixels of the window.
ImVec2 seen_place(const Desk& desk, std::size_t part, std::size_t index = 0) {
    const LoggedWidget& canvas = desk.widget("picture/canvas");
    const Viewport viewport{canvas.high.x - canvas.low.x, canvas.high.y - canvas.low.y};
    const Handle handle = handles_of(desk.setup(), desk.report(), part).at(index);
    const auto at = project(desk.session.pose.camera, glm::vec3(handle.place()), viewport);
    return {canvas.low.x + at->x, canvas.low.y + at->y};
}

ImVec2 moved(ImVec2 from, float x, float y) { return {from.x + x, from.y + y}; }

}  // namespace

TEST_CASE("a spacer is dragged longer by its knob, as one undo step, and follows the pointer") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    const ImVec2 knob = desk.place(knob_on(part));
    const ImVec2 before = seen_place(desk, part);
    desk.move(knob);
    desk.press();
    for (int i = 1; i <= 8; ++i)
        desk.move(moved(knob, 10.0F * static_cast<float>(i), 0));
    const ImVec2 during = seen_place(desk, part);
    const LoggedWidget& canvas = desk.widget("picture/canvas");
    const double mm_per_px = mm_per_pixel(
        desk.session.pose.camera, {canvas.high.x - canvas.low.x, canvas.high.y - canvas.low.y});
    // Half a step of 0.5 mm, and 0.1 mm for single precision.
    CHECK(near(during.x - before.x, 80, 0.26 / mm_per_px + 0.5));
    CHECK(near(desk.the<Spacer>().length.value, 20 + 80 * mm_per_px, 0.35));
    const double longer = desk.the<Spacer>().length.value;
    CHECK(longer * 2 == std::round(longer * 2));
    desk.release();
    CHECK(desk.the<Spacer>().length.value == longer);
    CHECK(desk.gestures_began == 1);
    CHECK(desk.gestures_ended == 1);
    CHECK(desk.history().labels().size() == 1);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.the<Spacer>().length.value == 20);
    CHECK_FALSE(desk.history().can_undo());
}

TEST_CASE("a spacer behind the diagonal follows the pointer although focus moves the whole train") {
    Setup setup = with_long_adapter();
    setup.parts[0].body.get<Refractor>().back_focus = {240};
    Spacer extension;
    extension.length = {20};
    setup.parts.insert(setup.parts.begin() + 4, Part{"Extension", extension, {}, {}});
    Desk desk(with_valid_choice(setup));
    REQUIRE(desk.report().budget.reaches);
    look_at(desk, 4);
    const ImVec2 knob = desk.place(knob_on(4));
    const ImVec2 before = seen_place(desk, 4);
    const double drawtube = desk.report().budget.drawtube.value;
    desk.move(knob);
    desk.press();
    for (int i = 1; i <= 6; ++i)
        desk.move(moved(knob, 0, -10.0F * static_cast<float>(i)));
    const ImVec2 during = seen_place(desk, 4);
    CHECK(desk.report().budget.drawtube.value < drawtube - 5);
    CHECK(near(during.x, before.x, 1));
    CHECK(near(during.y - before.y, -60, 2));  // half a step of 0.5 mm
    desk.release();
}

TEST_CASE("Esc puts everything back, camera too, and leaves no undo step") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    const Camera camera = desk.session.pose.camera;
    const ImVec2 knob = desk.place(knob_on(part));
    desk.move(knob);
    desk.press();
    desk.move(moved(knob, 40, 0));
    CHECK(desk.the<Spacer>().length.value > 25);
    desk.key(ImGuiKey_Escape);
    CHECK(desk.the<Spacer>().length.value == 20);
    desk.move(moved(knob, 70, 0));
    CHECK(desk.the<Spacer>().length.value == 20);
    CHECK(desk.session.pose.camera == camera);
    desk.release();
    CHECK_FALSE(desk.history().can_undo());
    CHECK(desk.gestures_began == desk.gestures_ended);
}

TEST_CASE("the drawtube is dragged out, stops fully out, and a double click lets it focus again") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Focuser>();
    look_at(desk, part);
    const ImVec2 knob = desk.place(knob_on(part));
    desk.drag(knob, moved(knob, 45, 0));
    REQUIRE(desk.the<Focuser>().held_at.has_value());
    CHECK(desk.the<Focuser>().held_at->value > 5);
    look_at(desk, part);
    const ImVec2 again = desk.place(knob_on(part));
    desk.drag(again, moved(again, 600, 0));
    CHECK(desk.the<Focuser>().held_at->value == 80);  // its travel
    CHECK(desk.history().labels().size() == 2);
    look_at(desk, part);
    desk.double_click(knob_on(part));
    CHECK_FALSE(desk.the<Focuser>().held_at.has_value());
}

TEST_CASE("a drawtube that is dragged near focus stops in focus") {
    Setup setup = with_long_adapter();
    setup.parts[0].body.get<Refractor>().back_focus = {190};
    Desk desk(setup);
    const double focus = desk.report().budget.wanted_drawtube.value;
    REQUIRE(focus > 5);
    const std::size_t part = desk.index<Focuser>();
    look_at(desk, part);
    const ImVec2 knob = desk.place(knob_on(part));
    desk.move(knob);
    desk.press();
    desk.move(moved(knob, 25, 0));
    CHECK(desk.the<Focuser>().held_at->value > focus + 2);
    desk.move(moved(knob, 1, 0));
    CHECK(near(desk.the<Focuser>().held_at->value, focus, 1e-9));
    desk.release();
    CHECK(near(desk.report().gap(Eye::left).value, 0, 1e-3));  // mm; of the solved focus
}

TEST_CASE("a shifter's lens is dragged along the light") {
    Desk desk(cured_setup());
    const std::size_t part = desk.index<Shifter>();
    look_at(desk, part);
    const double before = desk.the<Shifter>().lens_offset.value;
    const ImVec2 knob = desk.place(knob_on(part));
    // It stands behind the diagonal: the light runs upward.
    desk.drag(knob, moved(knob, 0, -30));
    CHECK(desk.the<Shifter>().lens_offset.value > before + 3);
    CHECK(desk.history().labels().size() == 1);
}

TEST_CASE("an arm is dragged outward by its eyepiece: the distance grows by twice as much") {
    Desk desk;
    const std::size_t part = desk.index<SplitterHead>();
    look_at(desk, part, 1.5708F, 0.9F);  // as the observer looks
    for (const int arm : {0, 1}) {
        const double before = desk.the<Observer>().pupil_distance.value;
        const ImVec2 knob = desk.place(knob_on(part, arm));
        const ImVec2 seat = seen_place(desk, part, static_cast<std::size_t>(arm));
        const float outward = knob.x > seat.x ? 1.0F : -1.0F;
        desk.drag(knob, moved(knob, outward * 8, 0));
        CHECK(desk.the<Observer>().pupil_distance.value > before + 2);
        desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
        CHECK(desk.the<Observer>().pupil_distance.value == before);
    }
    const ImVec2 knob = desk.place(knob_on(part));
    const float outward = knob.x > seen_place(desk, part).x ? 1.0F : -1.0F;
    desk.drag(knob, moved(knob, outward * 300, 0));
    CHECK(near(desk.the<Observer>().pupil_distance.value, 73.718,
               1e-3));  // 2 * 37 mm * cos 5 degrees
}

TEST_CASE("with Shift a knob moves by a tenth of the pointer's way in steps of 0.05 mm") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    const Camera camera = desk.session.pose.camera;
    const ImVec2 knob = desk.place(knob_on(part));
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, true);
    desk.drag(knob, moved(knob, 60, 0));
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, false);
    desk.frame(2);
    const double longer = desk.the<Spacer>().length.value;
    CHECK(longer > 20.5);
    CHECK(longer < 25);
    CHECK(near(longer * 20, std::round(longer * 20), 1e-9));  // rounding
    CHECK(desk.session.pose.camera.yaw_rad == camera.yaw_rad);
}

TEST_CASE("an axis that points at the eye is dragged up and down without jumps") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part, 1.5708F, 0);  // against the light
    const ImVec2 knob = desk.place(knob_on(part));
    desk.drag(knob, moved(knob, 25, 0));
    CHECK(desk.the<Spacer>().length.value == 20);
    desk.drag(desk.place(knob_on(part)), moved(knob, 0, 30));  // towards the viewer: longer
    CHECK(desk.the<Spacer>().length.value > 24);
    CHECK(desk.the<Spacer>().length.value < 50);
}

TEST_CASE("Alt with Left and Right moves what the selected part's knob moves") {
    Desk desk(with_long_adapter());
    desk.select(desk.index<Spacer>());
    desk.key(ImGuiKey_RightArrow, {ImGuiMod_Alt});
    CHECK(desk.the<Spacer>().length.value == 20.5);
    desk.key(ImGuiKey_LeftArrow, {ImGuiMod_Alt});
    desk.key(ImGuiKey_LeftArrow, {ImGuiMod_Alt});
    CHECK(desk.the<Spacer>().length.value == 19.5);
    desk.key(ImGuiKey_RightArrow, {ImGuiMod_Alt, ImGuiMod_Shift});
    CHECK(near(desk.the<Spacer>().length.value, 19.55, 1e-9));
    desk.select(desk.index<SplitterHead>());
    desk.key(ImGuiKey_RightArrow, {ImGuiMod_Alt});
    CHECK(desk.the<Observer>().pupil_distance.value == 63.5);
    desk.select(desk.index<Refractor>());
    const std::size_t edits = desk.edits.size();
    desk.key(ImGuiKey_RightArrow, {ImGuiMod_Alt});
    CHECK(desk.edits.size() == edits);
}

TEST_CASE("a part under the pointer shows its knob, and keeps it on the way there") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    desk.session.pose.selected_part.reset();
    desk.frame(2);
    CHECK_FALSE(desk.has(knob_on(part)));
    // On the tube's edge below the axis, in the middle of its length.
    const LoggedWidget& canvas = desk.widget("picture/canvas");
    const Viewport viewport{canvas.high.x - canvas.low.x, canvas.high.y - canvas.low.y};
    desk.session.view.shells = ShellView::whole;
    const Handle handle = handles_of(desk.setup(), desk.report(), part).at(0);
    const auto body = project(desk.session.pose.camera,
                              glm::vec3(handle.line.at(10) + Point(0, 18, 0)), viewport);
    desk.move({canvas.low.x + body->x, canvas.low.y + body->y});
    desk.frame(2);
    REQUIRE(desk.has(knob_on(part)));
    const ImVec2 knob = desk.place(knob_on(part));
    const ImVec2 on_the_way = moved(knob, 0, 20);
    desk.move(on_the_way);
    desk.frame(3);
    REQUIRE(desk.has(knob_on(part)));
    desk.move(knob);
    desk.press();
    desk.release();
    CHECK(desk.session.pose.selected_part == part);
    CHECK(desk.the<Spacer>().length.value == 20);  // a click moves nothing
    CHECK_FALSE(desk.history().can_undo());
}

TEST_CASE("a knob that is dragged out of the picture is still held, and let go there") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    const ImVec2 knob = desk.place(knob_on(part));
    desk.move(knob);
    desk.press();
    for (const float x : {200.0F, 700.0F, 1000.0F})
        desk.move(moved(knob, x, 0));
    const double far = desk.the<Spacer>().length.value;
    CHECK(far > 100);
    desk.move(moved(knob, 30, 0));
    CHECK(desk.the<Spacer>().length.value < far - 50);
    desk.move(moved(knob, 1000, 0));
    desk.release();
    CHECK(desk.the<Spacer>().length.value == far);
    CHECK(desk.history().labels().size() == 1);
    CHECK_FALSE(desk.transient.state().of_document.handles.drag.has_value());
    // The camera is the user's again.
    const Camera camera = desk.session.pose.camera;
    const ImVec2 ground = desk.place("picture/canvas", 0.9F, 0.1F);
    desk.drag(ground, moved(ground, -40, 10));
    CHECK(desk.session.pose.camera.yaw_rad != camera.yaw_rad);
}

TEST_CASE("a gesture that ends without the knob lets it go") {
    Desk desk(with_long_adapter());
    const std::size_t part = desk.index<Spacer>();
    look_at(desk, part);
    const ImVec2 knob = desk.place(knob_on(part));
    desk.move(knob);
    desk.press();
    desk.move(moved(knob, 20, 0));
    REQUIRE(desk.transient.state().of_document.handles.drag.has_value());
    desk.transient.state().shared.gesture_open =
        false;  // as when the widget vanishes while it is pressed
    desk.frame();
    CHECK_FALSE(desk.transient.state().of_document.handles.drag.has_value());
    desk.release();
}
