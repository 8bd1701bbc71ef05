#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

std::vector<std::string> names(const Desk& desk) {
    std::vector<std::string> all;
    for (const Part& part : desk.setup().parts)
        all.push_back(part.name);
    return all;
}

std::string row(std::size_t part) { return "train/row/" + std::to_string(part); }

}  // namespace

TEST_CASE("the list shows every part by its name, and a click selects it") {
    Desk desk;
    for (std::size_t i = 0; i < desk.setup().parts.size(); ++i) {
        REQUIRE(desk.has(row(i)));
        CHECK(desk.widget(row(i)).label == desk.setup().parts[i].name);
        desk.click(row(i));
        CHECK(desk.session.pose.selected_part == i);
    }
    CHECK(desk.edits.empty());
}

TEST_CASE("the list stands in the order of light") {
    Desk desk;
    for (std::size_t i = 1; i < desk.setup().parts.size(); ++i) {
        CHECK(desk.widget(row(i)).low.y > desk.widget(row(i - 1)).low.y);
    }
}

TEST_CASE("a part is added from the list of kinds behind the selected one, and is then selected") {
    Desk desk;
    desk.click(row(desk.index<Spacer>()));
    desk.click("train/add");
    desk.click("train/add/shifter");
    REQUIRE(find_part<Shifter>(desk.setup()) != nullptr);
    CHECK(desk.index<Shifter>() == desk.index<Spacer>() + 1);
    CHECK(desk.session.pose.selected_part == desk.index<Shifter>());
    desk.frame();
    CHECK(desk.has("field/lens_offset_mm/slider"));
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(find_part<Shifter>(desk.setup()) == nullptr);
}

TEST_CASE("every kind stands in the list of what can be added, with its help") {
    Desk desk;
    desk.click("train/add");
    for (const PartKind& kind : part_kinds()) {
        REQUIRE(desk.has("train/add/" + kind.key));
        CHECK(desk.widget("train/add/" + kind.key).label == kind.label);
        CHECK(desk.widget("train/add/" + kind.key).tooltip.starts_with(kind.help));
    }
}

TEST_CASE("a second telescope cannot be added") {
    Desk desk;
    const auto before = names(desk);
    desk.click("train/add");
    desk.click("train/add/" + std::string(Refractor::key));
    CHECK(names(desk) == before);
}

TEST_CASE("parts are moved, duplicated and removed by their buttons") {
    Desk desk;
    const auto before = names(desk);
    const std::size_t spacer = desk.index<Spacer>();
    desk.click(row(spacer));
    desk.click("train/down");
    CHECK(desk.index<Spacer>() == spacer + 1);
    CHECK(desk.session.pose.selected_part == spacer + 1);
    desk.click("train/up");
    CHECK(names(desk) == before);
    desk.click("train/duplicate");
    CHECK(desk.setup().parts.size() == before.size() + 1);
    CHECK(desk.setup().parts[spacer + 1].body.is<Spacer>());
    CHECK(desk.session.pose.selected_part == spacer + 1);
    desk.click("train/remove");
    CHECK(names(desk) == before);
    CHECK_FALSE(desk.session.pose.selected_part.has_value());
}

TEST_CASE("the same by keys") {
    Desk desk;
    const auto before = names(desk);
    const std::size_t spacer = desk.index<Spacer>();
    desk.select(spacer);
    desk.key(ImGuiKey_DownArrow, {ImGuiMod_Alt});
    CHECK(desk.index<Spacer>() == spacer + 1);
    desk.key(ImGuiKey_UpArrow, {ImGuiMod_Alt});
    CHECK(names(desk) == before);
    desk.key(ImGuiKey_D, {ImGuiMod_Ctrl});
    CHECK(desk.setup().parts.size() == before.size() + 1);
    desk.key(ImGuiKey_Delete);
    CHECK(names(desk) == before);
}

TEST_CASE("Ctrl+D counts although on a slow frame Ctrl is let go together with D") {
    Desk desk;
    const auto before = names(desk);
    desk.select(desk.index<Spacer>());
    ImGuiIO& io = ImGui::GetIO();
    io.AddKeyEvent(ImGuiMod_Ctrl, true);
    desk.frame();
    io.AddKeyEvent(ImGuiKey_D, true);
    io.AddKeyEvent(ImGuiMod_Ctrl, false);
    desk.frame();
    io.AddKeyEvent(ImGuiKey_D, false);
    desk.frame(2);
    CHECK(desk.setup().parts.size() == before.size() + 1);
}

TEST_CASE("what the train cannot do without is not removed and not moved") {
    Desk desk;
    const auto before = names(desk);
    desk.select(desk.index<Refractor>());
    CHECK_FALSE(desk.widget("train/remove").enabled);
    CHECK_FALSE(desk.widget("train/up").enabled);
    CHECK_FALSE(desk.widget("train/down").enabled);
    desk.click("train/remove");
    desk.key(ImGuiKey_Delete);
    CHECK(names(desk) == before);
}

TEST_CASE(
    "the arrows go through the list from the start, and on within the list after a click in it") {
    Desk desk;
    for (std::size_t i = 0; i < 3; ++i) {
        desk.key(ImGuiKey_DownArrow);
        CHECK(desk.session.pose.selected_part == i);
    }
    desk.key(ImGuiKey_UpArrow);
    CHECK(desk.session.pose.selected_part == 1U);
    desk.click(row(2));
    desk.key(ImGuiKey_DownArrow);
    desk.key(ImGuiKey_DownArrow);
    CHECK(desk.session.pose.selected_part.value_or(0) > 2U);
}

TEST_CASE("the Delete key belongs to an entry while it is typed into") {
    Desk desk;
    const auto before = names(desk);
    desk.select(desk.index<Spacer>());
    desk.click("field/length_mm/entry");
    desk.key(ImGuiKey_Delete);
    CHECK(names(desk) == before);
}

TEST_CASE("a part is renamed in its panel, and F2 goes there") {
    Desk desk;
    const std::size_t spacer = desk.index<Spacer>();
    desk.select(spacer);
    desk.retype("part/name", "Brass ring");
    CHECK(desk.setup().parts[spacer].name == "Brass ring");
    desk.key(ImGuiKey_F2);
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("Ring µ 2×");
    desk.key(ImGuiKey_Enter);
    CHECK(desk.setup().parts[spacer].name == "Ring µ 2×");
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.setup().parts[spacer].name == "Brass ring");
}

TEST_CASE("title and story can be changed while no part is selected") {
    Desk desk;
    desk.retype("setup/title", "Saturday evening");
    CHECK(desk.setup().title == "Saturday evening");
    desk.click("setup/edit_story");
    desk.click("setup/story");
    desk.type("We try the new head.");
    desk.click("setup/title");
    CHECK(desk.setup().story == "We try the new head.");
}

TEST_CASE("hovering a row lights up the part in the picture") {
    Desk desk;
    desk.move(desk.place(row(2)));
    desk.frame();
    CHECK(desk.last.picture.highlighted_part == 2);
}
