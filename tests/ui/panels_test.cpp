#include <set>

#include "parts/splitter_head.hpp"
#include "ui/desk.hpp"
#include "ui/panels.hpp"

using namespace beamfork;

TEST_CASE("every panel of the table has a stem of its own, a title, a help and a place") {
    std::set<std::string_view> stems;
    for (const PanelEntry& entry : panels()) {
        CAPTURE(entry.stem);
        CHECK(stems.insert(entry.stem).second);
        CHECK_FALSE(entry.title.empty());
        CHECK(entry.help.size() > 20);
        CHECK((entry.draw != nullptr));
        CHECK((entry.area != nullptr));
    }
}

TEST_CASE("every panel folds and unfolds by its heading") {
    Desk desk;
    for (const PanelEntry& entry : panels()) {
        const std::string stem(entry.stem);
        const std::string fold = entry.is_study() ? "study" : stem;
        CAPTURE(stem);
        if (entry.is_study()) {
            desk.session.layout.study = stem;
            desk.frame(2);
        }
        desk.click("panel/" + stem + "/fold");
        CHECK(desk.session.layout.folded.contains(fold));
        desk.click("panel/" + stem + "/fold");
        CHECK_FALSE(desk.session.layout.folded.contains(fold));
    }
}

TEST_CASE("with all panels folded the picture has nearly all of the window") {
    Desk desk;
    const float before = desk.widget("picture/canvas").high.x;
    for (const PanelEntry& entry : panels())
        desk.session.layout.folded.insert(entry.is_study() ? "study" : std::string(entry.stem));
    desk.frame(2);
    CHECK(desk.widget("picture/canvas").high.x > before + 200);
    CHECK(desk.widget("picture/canvas").high.y > 0.9F * ImGui::GetIO().DisplaySize.y);
}

TEST_CASE("every study is reached by the chooser, and one may have the whole strip") {
    Desk desk;
    for (const PanelEntry& entry : panels()) {
        if (!entry.is_study()) continue;
        const std::string stem(entry.stem);
        CAPTURE(stem);
        desk.click("study");
        desk.click("study/" + stem);
        CHECK(desk.session.layout.study == stem);
        CHECK(desk.has("panel/" + stem + "/fold"));
    }
    CHECK(desk.has("panel/focus_budget/fold"));
    const float narrow = desk.widget("study").low.x;
    desk.click("study/wide");
    CHECK_FALSE(desk.has("panel/focus_budget/fold"));
    CHECK(desk.widget("study").low.x < narrow - 200);
    desk.click("study/wide");
    CHECK(desk.has("panel/focus_budget/fold"));
}

TEST_CASE("a gap between panels is dragged") {
    Desk desk;
    const float width = desk.session.layout.column_width;
    const ImVec2 gap = desk.place("splitter/column");
    desk.drag(gap, {gap.x - 75, gap.y});
    CHECK(desk.session.layout.column_width > width + 3);
    const float height = desk.session.layout.strip_height;
    const ImVec2 below = desk.place("splitter/strip");
    desk.drag(below, {below.x, below.y - 45});
    CHECK(desk.session.layout.strip_height > height + 2);
    CHECK(desk.edits.empty());
}

TEST_CASE("the most severe finding is in sight at once, in the words of the report") {
    const Setup setup = short_setup();
    const Report report = report_of(setup, 16);
    REQUIRE(report.findings.front().severity == Severity::fails);
    Desk desk(setup, {1280, 720});
    REQUIRE(desk.has("findings/0"));
    const LoggedWidget& card = desk.widget("findings/0");
    CHECK(card.label == report.findings.front().sentence);
    const LoggedWidget& canvas = desk.widget("picture/canvas");
    CHECK(card.high.x <= canvas.low.x);
    CHECK(card.low.y >= canvas.low.y);
    CHECK(card.high.y <= canvas.high.y);
    CHECK(card.high.y > card.low.y + 15);
}

TEST_CASE("all findings are shown when asked for") {
    Desk desk;
    const Report report = report_of(desk.setup(), 16);
    REQUIRE(report.findings.size() > 1);
    const std::string last = "findings/" + std::to_string(report.findings.size() - 1);
    if (!desk.has(last)) {
        desk.click("findings/all");
        desk.frame(2);
    }
    CHECK(desk.has(last));
}

TEST_CASE("a click on a finding about a part selects the part") {
    Desk desk;
    const Report report = report_of(desk.setup(), 16);
    desk.session.findings.shows_all = true;
    desk.frame(3);
    for (std::size_t i = 0; i < report.findings.size(); ++i) {
        if (!report.findings[i].part) continue;
        desk.click("findings/" + std::to_string(i));
        CHECK(desk.session.pose.selected_part == report.findings[i].part);
        return;
    }
    FAIL("no finding is about a part");
}

TEST_CASE("the budget has a row for every step and a sentence for the drawtube") {
    Desk desk;
    const Report report = report_of(desk.setup(), 16);
    for (std::size_t i = 0; i < report.budget.rows.size(); ++i) {
        REQUIRE(desk.has("focus_budget/row/" + std::to_string(i)));
        CHECK(desk.widget("focus_budget/row/" + std::to_string(i)).label
              == report.budget.rows[i].label);
    }
    CHECK(desk.widget("focus_budget/travel").label.find("mm") != std::string::npos);
    for (const BudgetRow& row : report.budget.rows) {
        if (!row.part || row.entry != BudgetEntry::spends) continue;
        desk.click("focus_budget/row/" + std::to_string(&row - report.budget.rows.data()));
        CHECK(desk.session.pose.selected_part == row.part);
    }
}

TEST_CASE("light at the stops shows both eyes, what you get explains each number") {
    Desk desk(clipping_setup());
    for (const char* eye : {"left", "right"}) {
        CHECK(desk.has(std::string("light_at_stops/") + eye + "/picture"));
        CHECK(desk.has(std::string("light_at_stops/") + eye + "/plot"));
    }
    CHECK(desk.has("light_at_stops/opening/0"));
    desk.session.layout.study = "magnification";
    desk.frame(2);
    REQUIRE(desk.has("magnification/row/0"));
    CHECK(desk.widget("magnification/row/0").tooltip.size() > 20);
}

TEST_CASE("a setup that makes no train is told of, and every panel still draws") {
    Setup broken = short_setup();
    std::erase_if(broken.parts, [](const Part& part) { return part.body.is<SplitterHead>(); });
    Desk desk(with_valid_choice(broken));
    CHECK(desk.widget("findings/0").label.size() > 10);
    for (std::size_t i = 0; i < desk.setup().parts.size(); ++i)
        desk.select(i);
    CHECK(desk.has("train/row/0"));
    CHECK_FALSE(desk.has("focus_budget/travel"));
}

TEST_CASE("notices of the file and errors are shown until they are put away") {
    Desk desk;
    CHECK_FALSE(desk.has("notice_bar/close"));
    desk.notices = {{12, "'lenght_mm' has no effect; did you mean 'length_mm'?"}};
    desk.bench.tell({"The disk is full.", true});
    desk.frame(2);
    REQUIRE(desk.has("notice/error"));
    CHECK(desk.widget("notice/error").label == "The disk is full.");
    REQUIRE(desk.has("notice/file"));
    CHECK(desk.widget("notice/file").label.find("Line 12") == 0);
    desk.click("notice_bar/close");
    CHECK_FALSE(desk.has("notice/error"));
    CHECK_FALSE(desk.has("notice/file"));
    desk.bench.tell({"The file is locked.", true});
    desk.frame(2);
    CHECK(desk.has("notice/error"));
}

TEST_CASE("the welcome line goes away for good") {
    Desk desk;
    desk.session.welcome_dismissed = false;
    desk.frame(2);
    REQUIRE(desk.has("notice/welcome"));
    desk.click("notice_bar/close");
    CHECK(desk.session.welcome_dismissed);
    CHECK_FALSE(desk.has("notice/welcome"));
}

TEST_CASE("the cautions are one click away and name the Sun") {
    Desk desk;
    CHECK(desk.widget("status/cautions").label.find("Sun") != std::string::npos);
    desk.click("status/cautions");
    CHECK(desk.has("cautions/close"));
    desk.click("cautions/close");
    CHECK_FALSE(desk.has("cautions/close"));
}

TEST_CASE("what the tracing assumes is a click away") {
    Desk desk;
    desk.click("status/assumptions");
    CHECK(desk.has("assumptions/close"));
    desk.click("assumptions/close");
    CHECK_FALSE(desk.has("assumptions/close"));
}

TEST_CASE("F6 takes the keyboard from panel to panel and back to the picture") {
    Desk desk;
    std::set<std::string> expected{"picture", "top_bar"};
    for (const PanelEntry& entry : panels()) {
        if (!entry.is_study() || &entry == &shown_study(desk.session.layout))
            expected.insert(window_name(entry));
    }
    std::set<std::string> seen;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        desk.key(ImGuiKey_F6);
        seen.insert(ImGui::GetCurrentContext()->NavWindow->RootWindow->Name);
    }
    CHECK(seen == expected);
}

TEST_CASE("the whole window works at 640 by 400 and on a wide screen with large text") {
    for (const ImVec2 size : {ImVec2{640, 400}, ImVec2{3840, 2160}}) {
        Desk desk(clipping_setup(), size);
        desk.session.welcome_dismissed = false;
        desk.session.findings.shows_all = true;
        desk.session.layout.narrow_findings = true;
        for (std::size_t i = 0; i < desk.setup().parts.size(); ++i)
            desk.select(i);
        CHECK(desk.widget("picture/canvas").high.x > 0.4F * size.x);
        CHECK(desk.widget("findings/0").high.x < size.x);
        CHECK(ImGui::GetDrawData()->TotalVtxCount > 1000);
        desk.click("choose/target");
        desk.key(ImGuiKey_Escape);
        desk.key(ImGuiKey_O, {ImGuiMod_Ctrl});
        const LoggedWidget& accept = desk.widget("dialog/accept");
        CHECK(accept.high.x <= size.x);
    }
}

TEST_CASE("fit shows eyes, weight and joints, and a click on a joint selects the part behind it") {
    for (const bool is_wide : {false, true}) {
        Desk desk;
        desk.session.layout.study = "fit";
        desk.session.layout.study_is_wide = is_wide;
        desk.frame(3);
        REQUIRE(desk.has("fit/eyes/0"));
        REQUIRE(desk.has("fit/weight/0"));
        REQUIRE(desk.has("fit/joint/0"));
        CHECK(desk.widget("fit/eyes/1").tooltip.size() > 20);
        if (!is_wide) continue;
        desk.click("fit/joint/0");
        CHECK(desk.session.pose.selected_part == std::size_t{2});
    }
}
