#include <vector>

#include "ui/interface.hpp"
#include "ui/layout.hpp"

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
    for (const ImVec2 window :
         {ImVec2{640, 400}, ImVec2{1280, 720}, ImVec2{1920, 1080}, ImVec2{3840, 2160}}) {
        for (const float text : {15.0F, 22.0F, 30.0F}) {
            if (window.x < 800 && text > 20) continue;  // smaller than any screen with such letters
            CAPTURE(window.x);
            CAPTURE(text);
            const Session session;
            check_layout(lay_out(window, session, text, {}), window);
            check_layout(lay_out(window, session, text, {2 * text, 2 * text}), window);
        }
    }
}

TEST_CASE("the picture leads: it is the largest area of the window") {
    const Session session;
    const Layout layout = lay_out({1280, 720}, session, 15, {});
    const float picture = layout.scene.width * layout.scene.height;
    for (const Area& area :
         {layout.focus_budget, layout.light_at_stops, layout.study, layout.train, layout.part}) {
        CHECK(picture > 2 * area.width * area.height);
    }
}

TEST_CASE("a folded panel leaves its room to its neighbours") {
    Session session;
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
    Session session;
    session.column_width = 1000;
    session.strip_height = -4;
    session.train_share = 3;
    session.budget_share = 0.9F;
    session.light_share = 0.9F;
    keep_sizes_sensible(session);
    check_layout(lay_out({1280, 720}, session, 15, {}), {1280, 720});
    CHECK(session.budget_share + session.light_share <= 0.86F);
}
