// A window of 800 x 600: panels share one place, and nothing lies outside or is cut at a side.
#include "ui/desk.hpp"
#include "ui/panels.hpp"

using namespace beamfork;

namespace {

constexpr ImVec2 small_size{800, 600};

// Lists scroll up and down, so that only the sides are asked of what stands in them.
void check_sides(const Desk& desk, float width) {
    for (const auto& entry : desk.log.widgets) {
        CAPTURE(entry.first);
        CHECK(entry.second.low.x >= -0.5F);
        CHECK(entry.second.high.x <= width + 0.5F);
    }
}

bool are_apart(const LoggedWidget& a, const LoggedWidget& b) {
    return a.high.x <= b.low.x + 0.5F || b.high.x <= a.low.x + 0.5F || a.high.y <= b.low.y + 0.5F
           || b.high.y <= a.low.y + 0.5F;
}

// Those whose names begin so, which must not lie over each other.
void check_apart(const Desk& desk, const std::string& stem) {
    std::vector<std::pair<std::string, LoggedWidget>> found;
    for (const auto& entry : desk.log.widgets) {
        if (entry.first.starts_with(stem)) found.emplace_back(entry);
    }
    REQUIRE(found.size() > 1);
    for (std::size_t i = 0; i < found.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            CAPTURE(found[i].first);
            CAPTURE(found[j].first);
            CHECK(are_apart(found[i].second, found[j].second));
        }
    }
}

}  // namespace

TEST_CASE("every panel of a small window keeps within its sides, on either hand") {
    for (const bool at_left : {false, true}) {
        Desk desk(short_setup(), small_size);
        desk.session.layout.parts_at_left = at_left;
        for (const PanelEntry& entry : panels()) {
            if (!entry.is_in_strip()) continue;
            CAPTURE(entry.stem);
            desk.session.layout.narrow_shows = entry.stem;
            desk.frame(3);
            CHECK(desk.has("panel/" + std::string(entry.stem) + "/fold"));
            check_sides(desk, small_size.x);
        }
        for (std::size_t part = 0; part < desk.setup().parts.size(); ++part) {
            desk.select(part);
            check_sides(desk, small_size.x);
        }
    }
}

TEST_CASE("the bars of a small window have all their buttons side by side") {
    for (const float width : {800.0F, 700.0F, 640.0F}) {
        CAPTURE(width);
        Desk desk(short_setup(), {width, 600});
        check_apart(desk, "status/");
        check_apart(desk, "view/");
        const LoggedWidget& picture = desk.widget("picture/canvas");
        CHECK(desk.widget("view/more").high.x <= picture.high.x);
        CHECK(desk.widget("status/cautions").high.x <= width);
        CHECK(desk.widget("text/larger").high.x <= width);
    }
}

TEST_CASE("in a small window each panel of the strip is chosen by name, and findings unfold") {
    Desk desk(short_setup(), small_size);
    CHECK(desk.has("panel/focus_budget/fold"));
    CHECK_FALSE(desk.has("panel/light_at_stops/fold"));
    desk.click("study");
    desk.click("study/light_at_stops");
    CHECK(desk.has("panel/light_at_stops/fold"));
    CHECK_FALSE(desk.has("panel/focus_budget/fold"));
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("show brightness");
    desk.key(ImGuiKey_Enter);
    desk.frame(2);
    CHECK(desk.has("panel/brightness/fold"));
    CHECK_FALSE(desk.has("findings/0"));
    const float before = desk.widget("picture/canvas").high.x - desk.widget("picture/canvas").low.x;
    desk.click("panel/findings/fold");
    desk.frame(2);
    CHECK(desk.session.layout.narrow_findings);
    CHECK_FALSE(desk.session.layout.folded.contains("findings"));  // a wide window keeps its own
    CHECK(desk.widget("picture/canvas").high.x - desk.widget("picture/canvas").low.x
          < before - 100);
}

TEST_CASE("sides are swapped by name and from the menu") {
    Desk desk;
    const float before = desk.widget("panel/train/fold").low.x;
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("swap the sides");
    desk.key(ImGuiKey_Enter);
    desk.frame(2);
    CHECK(desk.widget("panel/train/fold").low.x < before - 500);
    const float width = desk.session.layout.column_width;
    desk.drag(desk.place("splitter/column"),
              {desk.place("splitter/column").x + 60, desk.place("splitter/column").y});
    CHECK(desk.session.layout.column_width
          > width + 2);  // away from the edge is wider, on either side
    desk.click("file/menu");
    desk.click("file/sides");
    desk.frame(2);
    CHECK(desk.widget("panel/train/fold").low.x > before - 100);
}
