// What moves in the picture by itself: only while it is wanted, and at rest the window asks for no frame.
#include "parts/spacer.hpp"
#include "scene/picture/light_arrival.hpp"
#include "scene/picture/pulled_apart.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

bool asks_for_frames(Desk& desk) {
    desk.frame(3);
    return desk.last.pace.light_runs || desk.last.pace.animating;
}

// The parts where they are when all is pulled apart.
bool sees_all_behind_the_drawtube(const Desk& desk) {
    const Bounds bounds = pulled_apart(desk.setup(), desk.report(), 1).rear_bounds;
    const SceneArea& scene = desk.last.picture.scene;
    const Viewport viewport{static_cast<float>(scene.width), static_cast<float>(scene.height)};
    for (unsigned corner = 0; corner < 8; ++corner) {
        const glm::vec3 share((corner & 1U) != 0, (corner & 2U) != 0, (corner & 4U) != 0);
        const glm::vec3 at = glm::mix(bounds.low, bounds.high, share);
        const auto pixel = project(desk.session.pose.camera, at, viewport);
        if (!pixel || pixel->x < 0 || pixel->x > viewport.width || pixel->y < 0
            || pixel->y > viewport.height)
            return false;
    }
    return true;
}

}  // namespace

TEST_CASE("at rest no frame is asked for; light in motion asks for them until it is held") {
    Desk desk;
    desk.frame(60);
    CHECK_FALSE(asks_for_frames(desk));
    desk.key(ImGuiKey_M);
    CHECK(desk.session.view.light_moves);
    CHECK(asks_for_frames(desk));
    desk.key(ImGuiKey_M, {ImGuiMod_Shift});
    CHECK_FALSE(asks_for_frames(desk));
    desk.key(ImGuiKey_M, {ImGuiMod_Shift});
    CHECK(asks_for_frames(desk));
    desk.session.view.light = false;  // nothing to be seen of it
    CHECK_FALSE(asks_for_frames(desk));
    desk.session.view.light = true;
    desk.session.view.apart = 0.5F;
    CHECK_FALSE(asks_for_frames(desk));
    desk.session.view.apart = 0;
    desk.key(ImGuiKey_M);
    desk.frame(60);
    CHECK_FALSE(asks_for_frames(desk));
}

TEST_CASE("a second of frames brings the packets on by their pace") {
    Desk desk;
    desk.session.view.light_moves = true;
    desk.session.view.light_front_mm = 0;
    desk.session.view.light_speed_mm_s = 90;
    desk.frame(60);  // 60 frames of 1/60 s each
    CHECK(near(desk.session.view.light_front_mm, 90, 0.1));
    ImGui::GetIO().DeltaTime = 3600;  // an hour's rest
    desk.frame();
    CHECK(near(desk.session.view.light_front_mm, 99, 0.2));
}

TEST_CASE("key X pulls the parts apart and the camera with them, and again puts both back") {
    Desk desk;
    desk.frame(40);
    const Camera before = desk.session.pose.camera;
    desk.key(ImGuiKey_X);
    CHECK(desk.last.pace.animating);
    CHECK(desk.session.view.apart > 0);
    CHECK(desk.session.view.apart < 0.1F);
    desk.frame(100);
    CHECK(desk.session.view.apart == 1);
    CHECK_FALSE((desk.session.pose.camera == before));
    CHECK(sees_all_behind_the_drawtube(desk));
    CHECK_FALSE(asks_for_frames(desk));
    desk.key(ImGuiKey_X);
    desk.frame(100);
    CHECK(desk.session.view.apart == 0);
    CHECK(near(desk.session.pose.camera.distance_mm, before.distance_mm, 1e-3));
    CHECK_FALSE(asks_for_frames(desk));
}

TEST_CASE("whoever turns the picture while the parts move keeps the camera") {
    Desk desk;
    desk.frame(40);
    desk.key(ImGuiKey_X);
    desk.frame(5);
    desk.session.pose.camera.yaw_rad += 0.5F;
    const Camera turned = desk.session.pose.camera;
    desk.frame(100);
    CHECK(desk.session.view.apart == 1);
    CHECK((desk.session.pose.camera == turned));
}

TEST_CASE("pressed again on the way, the parts turn back from where they are") {
    Desk desk;
    desk.frame(40);
    desk.key(ImGuiKey_X);
    desk.frame(30);
    const float on_the_way = desk.session.view.apart;
    REQUIRE(on_the_way > 0.1F);
    REQUIRE(on_the_way < 0.9F);
    desk.key(ImGuiKey_X);
    CHECK(desk.session.view.apart <= on_the_way + 0.2F);
    desk.frame(100);
    CHECK(desk.session.view.apart == 0);
}

TEST_CASE("knobs and dimensions wait until the parts are where they belong") {
    Desk desk;
    desk.select(desk.index<Spacer>());
    desk.frame(5);
    const auto has_knob = [&] {
        return std::any_of(desk.log.widgets.begin(), desk.log.widgets.end(),
                           [](const auto& one) { return one.first.starts_with("handle/"); });
    };
    REQUIRE(has_knob());
    desk.session.view.apart = 1;
    desk.frame(2);
    CHECK_FALSE(has_knob());
}
