#include "parts/focuser.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/unfolded_path/unfolded_path_view.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

Desk& show_path(Desk& desk) {
    desk.session.layout.study = "unfolded_path";
    desk.session.layout.study_is_wide = true;
    desk.frame(4);
    return desk;
}

std::string knob_of(std::size_t part) { return "unfolded/grip/" + std::to_string(part); }
std::string name_of(std::size_t part) { return "unfolded/part/" + std::to_string(part); }

UnfoldedPathState& path_state(Desk& desk) { return desk.transient.state().unfolded_path; }

}  // namespace

TEST_CASE("dragging a spacer's knob makes it longer in halves of a millimetre, as one undo step") {
    Desk desk;
    show_path(desk);
    const std::size_t spacer = desk.index<Spacer>();
    const double before = desk.the<Spacer>().length.value;
    const ImVec2 from = desk.place(knob_of(spacer));
    desk.drag(from, {from.x + 37, from.y});
    const double longer = desk.the<Spacer>().length.value;
    CHECK(longer > before + 2);
    CHECK(longer * 2 == std::round(longer * 2));
    CHECK(desk.gestures_began == 1);
    CHECK(desk.gestures_ended == 1);
    CHECK(desk.edits.size() > 1);
    CHECK(desk.session.pose.selected_part == spacer);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.the<Spacer>().length.value == before);
}

TEST_CASE("a dragged edge stays under the pointer although the train is laid out anew") {
    Desk desk;
    show_path(desk);
    const std::size_t spacer = desk.index<Spacer>();
    const ImVec2 from = desk.place(knob_of(spacer));
    desk.move(from);
    desk.press();
    desk.move({from.x + 10, from.y});
    desk.move({from.x + 50, from.y});
    REQUIRE(path_state(desk).drag.has_value());
    const double px_per_mm = path_state(desk).drag->view.px_per_mm;
    const double moved =
        desk.the<Spacer>().length.value - path_state(desk).drag->held.at_press().value;
    CHECK(near(moved * px_per_mm, 50, 0.25 * px_per_mm + 0.01));  // half a step of 0.5 mm
    desk.release();
    CHECK_FALSE(path_state(desk).drag.has_value());
}

TEST_CASE("with Shift a length is dragged finely: a tenth of the way, in steps of 0.05 mm") {
    Desk desk;
    show_path(desk);
    const ImVec2 from = desk.place(knob_of(desk.index<Spacer>()));
    desk.move(from);
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, true);
    desk.press();
    desk.move({from.x + 10, from.y});
    desk.move({from.x + 80, from.y});
    REQUIRE(path_state(desk).drag.has_value());
    const double px_per_mm = path_state(desk).drag->view.px_per_mm;
    desk.release();
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Shift, false);
    desk.frame(2);
    const double longer = desk.the<Spacer>().length.value;
    CHECK(near(longer * 20, std::round(longer * 20), 1e-9));             // rounding
    CHECK(near((longer - 1) * px_per_mm, 8, 0.025 * px_per_mm + 0.01));  // half a step of 0.05 mm
}

TEST_CASE("Esc puts a dragged length back, and the drag leaves no step behind") {
    Desk desk;
    show_path(desk);
    const ImVec2 from = desk.place(knob_of(desk.index<Focuser>()));
    desk.move(from);
    desk.press();
    desk.move({from.x + 30, from.y});
    CHECK(desk.the<Focuser>().held_at.has_value());
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.the<Focuser>().held_at.has_value());
    desk.move({from.x + 60, from.y});
    desk.release();
    CHECK_FALSE(desk.the<Focuser>().held_at.has_value());
    CHECK_FALSE(desk.history().can_undo());
}

TEST_CASE("dragging the drawtube holds it there, a double click lets it focus again") {
    Desk desk;
    show_path(desk);
    const std::string knob = knob_of(desk.index<Focuser>());
    const ImVec2 from = desk.place(knob);
    desk.drag(from, {from.x + 30, from.y});
    REQUIRE(desk.the<Focuser>().held_at.has_value());
    CHECK(desk.the<Focuser>().held_at->value > 1);
    desk.double_click(knob);
    CHECK_FALSE(desk.the<Focuser>().held_at.has_value());
}

TEST_CASE("a shifter's lens is dragged along the light") {
    Desk desk(cured_setup());
    show_path(desk);
    const double before = desk.the<Shifter>().lens_offset.value;
    const ImVec2 from = desk.place(knob_of(desk.index<Shifter>()));
    desk.drag(from, {from.x - 25, from.y});
    CHECK(desk.the<Shifter>().lens_offset.value < before - 1);
}

TEST_CASE(
    "pointing at a part's name or at its place in the path lights it up, a click selects it") {
    Desk desk;
    show_path(desk);
    const std::size_t head = desk.index<SplitterHead>();
    desk.move(desk.place(name_of(head)));
    desk.frame();
    CHECK(desk.last.picture.highlighted_part == static_cast<int>(head));
    // Above the name, in the picture, next to the axis lies the same part.
    const LoggedWidget picture = desk.widget("unfolded/picture");
    const ImVec2 at{desk.place(name_of(head)).x, (picture.low.y + picture.high.y) / 2 + 12};
    desk.move(at);
    desk.frame();
    CHECK(desk.last.picture.highlighted_part == static_cast<int>(head));
    desk.press();
    desk.release();
    CHECK(desk.session.pose.selected_part == head);
    desk.click(name_of(desk.index<PrismDiagonal>()));
    CHECK(desk.session.pose.selected_part == desk.index<PrismDiagonal>());
    CHECK(desk.edits.empty());
}

TEST_CASE("the wheel zooms about the pointer, dragging shifts, a double click shows all again") {
    Desk desk;
    show_path(desk);
    CHECK_FALSE(path_state(desk).view.has_value());
    ImVec2 at = desk.place("unfolded/picture", 0.7F, 0.3F);
    at = {std::floor(at.x), std::floor(at.y)};  // as the pointer counts
    const float left = desk.widget("unfolded/picture").low.x;
    desk.wheel(at, 1);
    REQUIRE(path_state(desk).view.has_value());
    const UnfoldedView once = *path_state(desk).view;
    desk.wheel(at, 3);
    const UnfoldedView nearer = *path_state(desk).view;
    CHECK(nearer.px_per_mm > 1.4 * once.px_per_mm);
    CHECK(near(nearer.place_at(at.x - left), once.place_at(at.x - left), 1e-9));
    desk.drag(at, {at.x + 40, at.y + 10});
    const UnfoldedView moved = *path_state(desk).view;
    CHECK(near(moved.x_of(nearer.place_at(100)), 140, 1e-3));  // whole pixels, kept as doubles
    CHECK_FALSE(desk.session.pose.selected_part.has_value());
    desk.double_click("unfolded/picture");
    CHECK_FALSE(path_state(desk).view.has_value());
    desk.wheel(at, 2);
    desk.click("unfolded/fit");
    CHECK_FALSE(path_state(desk).view.has_value());
    CHECK(desk.edits.empty());
}

TEST_CASE("with the keyboard on the selected part, Left and Right change its length by 0.5 mm") {
    Desk desk;
    show_path(desk);
    const std::size_t spacer = desk.index<Spacer>();
    const double before = desk.the<Spacer>().length.value;
    desk.click(name_of(spacer));
    desk.key(ImGuiKey_RightArrow);
    CHECK(desk.the<Spacer>().length.value == before + 0.5);
    desk.key(ImGuiKey_RightArrow);
    desk.key(ImGuiKey_LeftArrow);
    desk.key(ImGuiKey_LeftArrow);
    CHECK(desk.the<Spacer>().length.value == before);
    // Another part is selected: the arrows leave it alone.
    desk.session.pose.selected_part = desk.index<PrismDiagonal>();
    desk.key(ImGuiKey_RightArrow);
    CHECK(desk.the<Spacer>().length.value == before);
}

TEST_CASE("one eye can be looked at alone, and a narrow panel lists its parts below the picture") {
    Desk desk;
    show_path(desk);
    desk.click("unfolded/eyes/Right");
    CHECK(path_state(desk).eyes == UnfoldedEyes::right);
    desk.session.layout.study_is_wide = false;
    desk.frame(3);
    CHECK(desk.has("unfolded/picture"));
    const LoggedWidget telescope = desk.widget(name_of(desk.index<Refractor>()));
    const LoggedWidget focuser = desk.widget(name_of(desk.index<Focuser>()));
    CHECK(focuser.low.y >= telescope.high.y);
    CHECK(focuser.low.x == telescope.low.x);
}
