// Findings beside the picture, and their cures by hover, click and one key.
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

// The name of the first cure's button, and which it is.
struct CureButton {
    std::string name;
    CurePick pick;
};
CureButton first_cure(const Desk& desk) {
    for (std::size_t i = 0; i < desk.report().findings.size(); ++i) {
        const std::string name = "findings/" + std::to_string(i) + "/cure/0";
        if (desk.has(name)) return {name, {i, 0}};
    }
    throw std::runtime_error("no cure is shown");
}

}  // namespace

TEST_CASE(
    "a cure under the pointer is asked for as a ghost, and no longer when the pointer leaves") {
    Desk desk(short_setup(), {1280, 720});
    desk.seek_cures();
    const CureButton cure = first_cure(desk);
    const Setup before = desk.setup();
    desk.move(desk.place(cure.name));
    REQUIRE(desk.last.desk.preview.has_value());
    CHECK(*desk.last.desk.preview == cure.pick);
    CHECK(desk.setup() == before);
    desk.move(desk.place("picture/canvas", 0.9F, 0.9F));
    CHECK_FALSE(desk.last.desk.preview.has_value());
}

TEST_CASE("one click applies a cure, one key takes it back") {
    Desk desk(short_setup(), {1280, 720});
    desk.seek_cures();
    const CureButton cure = first_cure(desk);
    const Setup before = desk.setup();
    const Setup wanted = desk.report().findings[cure.pick.finding].cures[0].setup;
    desk.click(cure.name);
    CHECK(desk.setup() == wanted);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.setup() == before);
}

TEST_CASE("a finding says when cures are sought and when there is none") {
    Desk desk(short_setup(), {1600, 1300});
    REQUIRE(desk.has("findings/0/no_cure"));
    CHECK(desk.widget("findings/0/no_cure").label.find("Looking") == 0);
    desk.seek_cures();
    for (std::size_t i = 0; i < desk.report().findings.size(); ++i) {
        const std::string name = "findings/" + std::to_string(i);
        if (!desk.has(name)) continue;
        const Finding& finding = desk.report().findings[i];
        CHECK(desk.has(name + "/no_cure") == (wants_cure(finding) && finding.cures.empty()));
    }
}

TEST_CASE("findings never lie over the picture, folded or not") {
    for (const ImVec2 size : {ImVec2{1280, 720}, ImVec2{1920, 1080}}) {
        Desk desk(short_setup(), size);
        desk.session.findings.shows_all = true;
        desk.seek_cures();
        const LoggedWidget& canvas = desk.widget("picture/canvas");
        const float wide = canvas.high.x - canvas.low.x;
        for (const auto& [name, widget] : desk.log.widgets) {
            if (name.rfind("findings/", 0) == 0) CHECK(widget.high.x <= canvas.low.x);
        }
        desk.click("panel/findings/fold");
        const LoggedWidget& now = desk.widget("picture/canvas");
        CHECK(now.high.x - now.low.x > wide + 100);
        CHECK_FALSE(desk.has("findings/0"));
        CHECK(desk.widget("panel/findings/fold").high.y <= now.low.y);
    }
}
