// What the open setup is held against: as opened, before the last change, kept aside, a demo, a file that is gone.
#include "app/comparison_desk.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

struct ComparisonBench {
    Workbench bench{ReadSetup{Document{short_setup(), {}, {}, {}}, {}}};
    ComparisonDesk desk;

    ComparisonBench() { bench.refresh(); }
    void set_back_focus(double mm) {
        Requests edit;
        edit.edits.emplace_back(SetField{0, "back_focus_mm", mm});
        bench.carry_out(edit);
        bench.refresh();
    }
    ComparisonView ask(const std::string& key, CompanionPlace place = CompanionPlace::none) {
        Requests requests;
        requests.comparison = ComparisonRequest{key, place};
        desk.refresh(bench, requests);
        bench.refresh();
        View view = bench.view();
        desk.fill(view, bench);
        return view.comparison;
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
    Requests keep;
    keep.keeps_for_comparison = true;
    at.desk.refresh(at.bench, keep);
    at.set_back_focus(103);
    CHECK(ComparisonBench::back_focus(at.ask("kept")) == 102);
    CHECK(ComparisonBench::back_focus(at.ask("before")) == 102);
    CHECK(ComparisonBench::back_focus(at.ask("opened")) == opened);
}

TEST_CASE("the picture holds the other setup while it is asked for, and follows the edits") {
    ComparisonBench at;
    const std::size_t alone = at.bench.frame().meshes.size();
    const auto view = at.ask("demo:" + at.bench.view().demos.front().asset, CompanionPlace::beside);
    REQUIRE(view.other != nullptr);
    const std::size_t both = at.bench.frame().meshes.size();
    CHECK(both > alone);
    const auto before = at.bench.frame().revision;
    at.set_back_focus(104);
    at.ask("demo:" + at.bench.view().demos.front().asset, CompanionPlace::beside);
    CHECK(at.bench.frame().meshes.size() == both);
    CHECK(at.bench.frame().revision != before);
    at.desk.refresh(at.bench, Requests{});
    at.bench.refresh();
    CHECK(at.bench.frame().meshes.size() == alone);
}

TEST_CASE("a file that cannot be read is told, and the setup stays") {
    ComparisonBench at;
    const auto view = at.ask("file:/nowhere/at-all.train.toml", CompanionPlace::over);
    CHECK(view.other == nullptr);
    CHECK(view.problem.find("at-all") != std::string::npos);
    CHECK(at.bench.report() != nullptr);
}
