#include <vector>

#include "ui/shell/layout.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::vector<Area> areas(const Layout& layout) {
    return {layout.top_bar,        layout.notice_bar, layout.scene,    layout.focus_budget,
            layout.light_at_stops, layout.study,      layout.train,    layout.part,
            layout.status_bar,     layout.findings,   layout.setup_row};
}

bool overlap(const Area& a, const Area& b) {
    const bool apart =
        a.right() <= b.left || b.right() <= a.left || a.bottom() <= b.top || b.bottom() <= a.top;
    return !apart && a.width > 0 && b.width > 0 && a.height > 0 && b.height > 0;
}

void check_layout(const Layout& layout, ImVec2 window) {
    const auto all = areas(layout);
    for (std::size_t i = 0; i < all.size(); ++i) {
        CAPTURE(i);
        CHECK(all[i].width >= 0);
        CHECK(all[i].height >= 0);
        CHECK(all[i].left >= 0);
        CHECK(all[i].top >= 0);
        CHECK(all[i].right() <= window.x + 0.5F);
        CHECK(all[i].bottom() <= window.y + 0.5F);
        for (std::size_t j = 0; j < i; ++j) {
            CAPTURE(j);
            CHECK_FALSE(overlap(all[i], all[j]));
        }
    }
}

}  // namespace

TEST_CASE("areas lie within the window and apart from each other at every size") {
    for (const ImVec2 window : {ImVec2{640, 400}, ImVec2{800, 600}, ImVec2{1280, 720},
                                ImVec2{1920, 1080}, ImVec2{3840, 2160}}) {
        for (const float text : {15.0F, 22.0F, 30.0F}) {
            if (window.x < 800 && text > 20) continue;  // smaller than any screen with such letters
            CAPTURE(window.x);
            CAPTURE(text);
            LayoutSession session;
            for (const bool at_left : {false, true}) {
                session.parts_at_left = at_left;
                check_layout(lay_out(window, session, text, {}), window);
                check_layout(lay_out(window, session, text, {2 * text, 2 * text}), window);
            }
        }
    }
}

TEST_CASE("the picture leads: it is the largest area of the window") {
    const LayoutSession session;
    const Layout layout = lay_out({1280, 720}, session, 15, {});
    const float picture = layout.scene.width * layout.scene.height;
    for (const Area& area :
         {layout.focus_budget, layout.light_at_stops, layout.study, layout.train, layout.part}) {
        CHECK(picture > 2 * area.width * area.height);
    }
}

TEST_CASE("a folded panel leaves its room to its neighbours") {
    LayoutSession session;
    const Layout before = lay_out({1280, 720}, session, 15, {});
    session.folded = {"focus_budget"};
    const Layout one = lay_out({1280, 720}, session, 15, {});
    CHECK(one.focus_budget.width < before.focus_budget.width);
    CHECK(one.light_at_stops.width > before.light_at_stops.width);
    check_layout(one, {1280, 720});
    session.folded = {"focus_budget", "light_at_stops", "study"};
    CHECK(lay_out({1280, 720}, session, 15, {}).scene.height > before.scene.height + 100);
    session.folded = {"train"};
    CHECK(lay_out({1280, 720}, session, 15, {}).part.height > before.part.height);
    session.folded = {"part"};
    CHECK(lay_out({1280, 720}, session, 15, {}).train.height > before.train.height);
}

TEST_CASE("sizes that were dragged too far come back to what works") {
    LayoutSession session;
    session.column_width = 1000;
    session.strip_height = -4;
    session.train_share = 3;
    session.budget_share = 0.9F;
    session.light_share = 0.9F;
    keep_sizes_sensible(session);
    check_layout(lay_out({1280, 720}, session, 15, {}), {1280, 720});
    CHECK(session.budget_share + session.light_share <= 0.86F);
}

TEST_CASE("for the other hand column and findings change sides, and the strip is read as before") {
    LayoutSession session;
    const Layout right = lay_out({1280, 720}, session, 15, {});
    session.parts_at_left = true;
    const Layout left = lay_out({1280, 720}, session, 15, {});
    CHECK(left.train.left == 0);
    CHECK(left.part.left == 0);
    CHECK(left.findings.right() == 1280);
    CHECK(left.scene.width == right.scene.width);
    CHECK(left.focus_budget.left < left.light_at_stops.left);
    CHECK(left.light_at_stops.left < left.study.left);
    CHECK(left.study.right() == 1280);
    CHECK(left.column_splitter.left == left.train.right());
    session.folded = {"train", "part", "findings"};
    for (const bool at_left : {false, true}) {
        session.parts_at_left = at_left;
        const Layout folded = lay_out({800, 600}, session, 15, {});
        CHECK_FALSE(overlap(folded.findings, folded.train));
    }
}

TEST_CASE("a narrow window gives the strip to one panel and the room of findings to the picture") {
    LayoutSession session;
    const Layout layout = lay_out({800, 600}, session, 15, {});
    CHECK(layout.is_narrow);
    CHECK(layout.focus_budget.width == 0);
    CHECK(layout.light_at_stops.width == 0);
    CHECK(layout.scene.width > 480);
    CHECK(layout.study.width == layout.scene.width);
    CHECK_FALSE(lay_out({1280, 720}, session, 15, {}).is_narrow);
    CHECK(lay_out({1280, 720}, session, 30, {}).is_narrow);  // large letters need the room too
    session.narrow_findings = true;
    CHECK(lay_out({800, 600}, session, 15, {}).scene.width < layout.scene.width - 150);
    CHECK(is_panel_folded(session, "findings", false) == session.folded.contains("findings"));
}
