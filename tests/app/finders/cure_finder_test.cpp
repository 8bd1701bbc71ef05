// Cures sought in the background, handed to the bench, shown as a ghost while the pointer is on one.
#include <chrono>

#include "app/finders/cure_finder.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// True when the cures came within half a minute.
bool wait_for_cures(CureFinder& finder, Workbench& bench) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
    while (!finder.refresh(bench)) {
        if (std::chrono::steady_clock::now() > end) return false;
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    return true;
}

std::optional<CurePick> first_pick(const Workbench& bench) {
    for (std::size_t i = 0; i < bench.report()->findings.size(); ++i) {
        if (!bench.report()->findings[i].cures.empty()) return CurePick{i, 0};
    }
    return std::nullopt;
}

}  // namespace

TEST_CASE("cures found in the background arrive, show as a ghost, and go with the pointer") {
    Workbench bench(ReadSetup{Document{short_setup(), {}, {}, {}}, {}});
    bench.refresh();
    CureFinder finder([] {});
    REQUIRE(wait_for_cures(finder, bench));
    CHECK(bench.report()->cures_are_sought);
    const auto pick = first_pick(bench);
    REQUIRE(pick.has_value());

    const std::uint64_t plain = bench.frame().revision;
    const std::size_t meshes = bench.frame().meshes.size();
    DeskRequests hover;
    hover.preview = pick;
    bench.carry_out(hover);
    CHECK(bench.refresh());
    CHECK(bench.frame().revision != plain);
    CHECK(bench.frame().meshes.size() > meshes);
    CHECK_FALSE(bench.refresh());  // nothing is made anew while the pointer rests
    bench.carry_out(DeskRequests{});
    CHECK(bench.refresh());
    CHECK(bench.frame().revision == plain);
    CHECK_FALSE(bench.view().modified);
}

TEST_CASE("cures of a setup that was changed meanwhile are not taken") {
    Workbench bench(ReadSetup{Document{short_setup(), {}, {}, {}}, {}});
    bench.refresh();
    const std::uint64_t old = bench.report_revision();
    std::vector<std::vector<Cure>> cures(bench.report()->findings.size(),
                                         {Cure{.what = "Old", .removes = true}});
    DeskRequests change;
    change.edits.emplace_back(SetTitle{"Another"});
    bench.carry_out(change);
    bench.refresh();
    bench.adopt_cures(old, cures);
    CHECK_FALSE(bench.report()->cures_are_sought);
}
