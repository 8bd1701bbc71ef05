#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"
#include "ui/picture/viewport.hpp"

using namespace beamfork;

namespace {

// A place in the picture that no panel covers.
ImVec2 free_place(const Desk& desk) { return desk.place("picture/canvas", 0.75F, 0.15F); }

void settle(Desk& desk) { desk.frame(60); }  // one second

}  // namespace

TEST_CASE("the first frame with a report shows the overview") {
    Desk desk;
    CHECK(desk.session.pose.camera_is_set);
    CHECK(desk.session.pose.camera.distance_mm > 100);
}

TEST_CASE("dragging turns, right dragging and Shift dragging shift, the wheel comes nearer") {
    Desk desk;
    const ImVec2 from = free_place(desk);
    const ImVec2 to{from.x - 60, from.y + 20};
    const Camera before = desk.session.pose.camera;
    desk.drag(from, to);
    CHECK(desk.session.pose.camera.yaw_rad != before.yaw_rad);
    CHECK(desk.session.pose.camera.target == before.target);
    CHECK(desk.session.pose.camera.distance_mm == before.distance_mm);

    const Camera turned = desk.session.pose.camera;
    desk.drag(from, to, 1);
    CHECK(desk.session.pose.camera.yaw_rad == turned.yaw_rad);
    CHECK(desk.session.pose.camera.target != turned.target);

    const Camera shifted = desk.session.pose.camera;
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, true);
    desk.drag(from, to);
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, false);
    CHECK(desk.session.pose.camera.yaw_rad == shifted.yaw_rad);
    CHECK(desk.session.pose.camera.target != shifted.target);

    desk.wheel(from, 2);
    CHECK(desk.session.pose.camera.distance_mm < shifted.distance_mm);
    desk.wheel(from, -4);
    CHECK(desk.session.pose.camera.distance_mm > shifted.distance_mm);
    CHECK(desk.edits.empty());
}

TEST_CASE("the scene is asked for in the size it is shown at, in pixels of the framebuffer") {
    Desk desk;
    const LoggedWidget canvas = desk.widget("picture/canvas");
    CHECK(near(desk.last.picture.scene.width, canvas.high.x - canvas.low.x, 0.51));  // whole pixels
    CHECK(near(desk.last.picture.scene.height, canvas.high.y - canvas.low.y, 0.51));
    ImGui::GetIO().DisplayFramebufferScale = {2, 2};
    desk.frame();
    CHECK(near(desk.last.picture.scene.width, 2 * (canvas.high.x - canvas.low.x), 0.51));
}

TEST_CASE("standard views are reached smoothly by key and by button") {
    Desk desk;
    desk.key(ImGuiKey_2);
    CHECK(desk.last.pace.animating);
    settle(desk);
    CHECK_FALSE(desk.last.pace.animating);
    CHECK(near(desk.session.pose.camera.yaw_rad, 0,
               1e-5));  // the side view's direction, single precision
    desk.click("view/top");
    settle(desk);
    CHECK(desk.session.pose.camera.pitch_rad > 1.2F);
    desk.key(ImGuiKey_H);
    settle(desk);
    CHECK(desk.session.pose.camera.pitch_rad < 1.2F);
}

TEST_CASE("letters that are typed into an entry do not move the camera") {
    Desk desk;
    desk.select(desk.index<Spacer>());
    const Camera before = desk.session.pose.camera;
    desk.click("part/name");
    for (const ImGuiKey key : {ImGuiKey_2, ImGuiKey_F, ImGuiKey_H, ImGuiKey_N})
        desk.key(key);
    desk.key(ImGuiKey_Escape);
    settle(desk);
    CHECK(desk.session.pose.camera == before);
    CHECK(desk.session.view.labels);
}

TEST_CASE(
    "a click on a body selects its part, a double click frames it, the ground selects nothing") {
    Desk desk;
    desk.key(ImGuiKey_2);
    settle(desk);
    // The middle of the telescope's tube, seen from the side.
    const LoggedWidget& canvas = desk.widget("picture/canvas");
    const ImVec2 size{canvas.high.x - canvas.low.x, canvas.high.y - canvas.low.y};
    desk.session.view.shells = ShellView::whole;
    const auto at = project(desk.session.pose.camera, {0, 0, 300}, {size.x, size.y});
    REQUIRE(at.has_value());
    const ImVec2 tube{canvas.low.x + at->x, canvas.low.y + at->y};
    desk.move(tube);
    CHECK(desk.last.picture.highlighted_part == static_cast<int>(desk.index<Refractor>()));
    desk.press();
    desk.release();
    CHECK(desk.session.pose.selected_part == desk.index<Refractor>());
    desk.drag(free_place(desk), free_place(desk));
    CHECK_FALSE(desk.session.pose.selected_part.has_value());
}

TEST_CASE("F comes nearer to the selected part") {
    Desk desk;
    const float far = desk.session.pose.camera.distance_mm;
    desk.select(desk.index<PrismDiagonal>());
    desk.key(ImGuiKey_F);
    settle(desk);
    CHECK(desk.session.pose.camera.distance_mm < 0.7F * far);
}

TEST_CASE("tubes and names are switched at the foot of the picture") {
    Desk desk;
    desk.click("view/shells/Hidden");
    CHECK(desk.session.view.shells == ShellView::hidden);
    desk.click("view/shells/Cut");
    CHECK(desk.session.view.shells == ShellView::section);
    desk.click("view/labels");
    CHECK_FALSE(desk.session.view.labels);
    desk.key(ImGuiKey_N);
    CHECK(desk.session.view.labels);
    desk.click("view/night");
    CHECK(desk.session.view.night);
    desk.key(ImGuiKey_R);
    CHECK_FALSE(desk.session.view.night);
    desk.click("view/more");
    desk.click("view/clipped");
    CHECK_FALSE(desk.session.view.clipped_rays);
}

TEST_CASE("dimensions are switched by button and by key, and every part draws with them") {
    Desk desk(cured_setup());
    CHECK(desk.session.view.dimensions);
    for (std::size_t part = 0; part < desk.setup().parts.size(); ++part)
        desk.select(part);
    desk.click("view/dimensions");
    CHECK_FALSE(desk.session.view.dimensions);
    desk.key(ImGuiKey_D);
    CHECK(desk.session.view.dimensions);
    CHECK(desk.edits.empty());
}
