// What the open setup is held against: as opened, before the last change, kept aside, a demo, a file that is gone.
#include <algorithm>

#include "app/comparison/comparison_desk.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

struct ComparisonBench {
    Workbench bench{ReadSetup{Document{short_setup(), {}, {}, {}}, {}}};
    ComparisonDesk desk;

    ComparisonBench() { bench.refresh(); }
    void set_back_focus(double mm) {
        DeskRequests edit;
        edit.edits.emplace_back(SetField{0, "back_focus_mm", mm});
        bench.carry_out(edit);
        bench.refresh();
    }
    ComparisonView ask(const std::string& key, CompanionPlace place = CompanionPlace::none) {
        ComparisonRequests requests;
        requests.shown = ComparisonRequest{key, place};
        desk.refresh(bench, requests);
        bench.refresh();
        return desk.view(bench.view());
    }
    static double back_focus(const ComparisonView& view) {
        REQUIRE(view.other != nullptr);
        return std::get<double>(
            field_value(view.other->setup.parts[0].body, "back_focus_mm").value());
    }
};

}  // namespace

TEST_CASE("a setup is held against moments of its own history") {
    ComparisonBench at;
    at.set_back_focus(101);
    at.set_back_focus(102);
    const double opened = ComparisonBench::back_focus(at.ask("opened"));
    CHECK(opened != 101);
    CHECK(ComparisonBench::back_focus(at.ask("before")) == 101);
    CHECK(at.ask("kept").other == nullptr);
    CHECK_FALSE(at.ask("kept").problem.empty());
    ComparisonRequests keep;
    keep.keeps = true;
    at.desk.refresh(at.bench, keep);
    at.set_back_focus(103);
    CHECK(ComparisonBench::back_focus(at.ask("kept")) == 102);
    CHECK(ComparisonBench::back_focus(at.ask("before")) == 102);
    CHECK(ComparisonBench::back_focus(at.ask("opened")) == opened);
}

TEST_CASE("the picture holds the other setup while it is asked for, and follows the edits") {
    ComparisonBench at;
    const std::size_t alone = at.bench.frame().meshes.size();
    const auto view = at.ask("demo:" + demos().front().asset, CompanionPlace::beside);
    REQUIRE(view.other != nullptr);
    const std::size_t both = at.bench.frame().meshes.size();
    CHECK(both > alone);
    const auto before = at.bench.frame().revision;
    at.set_back_focus(104);
    at.ask("demo:" + demos().front().asset, CompanionPlace::beside);
    CHECK(at.bench.frame().meshes.size() == both);
    CHECK(at.bench.frame().revision != before);
    at.desk.refresh(at.bench, ComparisonRequests{});
    at.bench.refresh();
    CHECK(at.bench.frame().meshes.size() == alone);
}

TEST_CASE("a split picture has each setup whole in its own half") {
    ComparisonBench at;
    const Frame alone = at.bench.frame();
    CHECK(at.bench.other_frame() == nullptr);
    at.ask("demo:" + demos().front().asset, CompanionPlace::split);
    CHECK(at.bench.frame().meshes.size() == alone.meshes.size());
    CHECK(at.bench.frame().labels.size() == alone.labels.size() + 1);  // which one it is
    const Frame* other = at.bench.other_frame();
    REQUIRE(other != nullptr);
    CHECK_FALSE(other->light.empty());
    CHECK(other->revision != at.bench.frame().revision);
    at.ask("demo:" + demos().front().asset, CompanionPlace::over);
    CHECK(at.bench.other_frame() == nullptr);
}

TEST_CASE("a file that cannot be read is told, and the setup stays") {
    ComparisonBench at;
    const auto view = at.ask("file:/nowhere/at-all.train.toml", CompanionPlace::over);
    CHECK(view.other == nullptr);
    CHECK(view.problem.find("at-all") != std::string::npos);
    CHECK(at.bench.report() != nullptr);
}

TEST_CASE(
    "a setup that is open beside is held against this one, with its edits, until it is closed") {
    SetupRow row(ReadSetup{Document{short_setup(), {}, {}, {}}, {}});
    SetupPose pose;
    const auto ask = [&](Command command) {
        DeskRequests requests;
        requests.commands.push_back(std::move(command));
        row.carry_out(requests, pose);
    };
    const auto set_back_focus = [&](double mm) {
        DeskRequests requests;
        requests.edits.emplace_back(SetField{0, "back_focus_mm", mm});
        row.carry_out(requests, pose);
    };
    const auto first = row.shown_number();
    ask(DuplicateSetup{});
    const auto second = row.shown_number();
    REQUIRE(first != second);
    set_back_focus(101);
    ask(ShowSetup{first});
    ComparisonDesk desk;
    const auto compared = [&] {
        ComparisonRequests requests;
        requests.shown = ComparisonRequest{"open:" + std::to_string(second), {}};
        row.shown().refresh();
        desk.refresh(row.shown(), requests, &row);
        return desk.view(row.view());
    };
    const ComparisonView before = compared();
    CHECK(ComparisonBench::back_focus(before) == 101);
    const auto offered = [](const ComparisonView& view, const std::string& key) {
        return std::any_of(view.choices.begin(), view.choices.end(),
                           [&](const auto& choice) { return choice.key == key; });
    };
    CHECK(offered(before, "open:" + std::to_string(second)));
    CHECK_FALSE(offered(before, "open:" + std::to_string(first)));
    ask(ShowSetup{second});
    set_back_focus(102);
    ask(ShowSetup{first});
    CHECK(ComparisonBench::back_focus(compared()) == 102);
    ask(CloseSetup{second});
    const ComparisonView closed = compared();
    CHECK(closed.other == nullptr);
    CHECK_FALSE(closed.problem.empty());
}
