// The study "tune" worked out in the background: the newest question wins, and the window never waits.
#include <chrono>

#include "app/tune/tune_finder.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tune/tune_choice.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

TuneQuestion
question_of(const Setup& setup, const std::string& watched, const std::string& wanted) {
    return tune_choice(setup, setup.parts.front().name + ".back_focus_mm", watched, wanted)
        .question;
}

// Refreshes as the window does after each frame, until that is shown; half a minute at most.
template <class Suits>
bool wait_until(TuneFinder& finder,
                const Workbench& bench,
                const TuneQuestion& question,
                const Suits& suits) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
    while (std::chrono::steady_clock::now() < end) {
        finder.refresh(bench, question);
        const auto study = finder.study();
        if (study != nullptr && suits(*study)) return true;
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    return false;
}

}  // namespace

TEST_CASE("curve and table arrive, and the newest of many questions is answered last") {
    Workbench bench(ReadSetup{Document{short_setup(), {}, {}, {}}, {}});
    bench.refresh();
    TuneFinder finder([] {});
    CHECK_FALSE(finder.refresh(bench, std::nullopt));
    const Setup& setup = bench.document().setup;
    for (int wanted = 1; wanted < 20; ++wanted)
        finder.refresh(bench, question_of(setup, "edge_light", std::to_string(wanted)));
    const TuneQuestion last = question_of(setup, "margin", "5");
    REQUIRE(wait_until(finder, bench, last, [&](const TuneStudy& study) {
        return study.question == last && study.has_changes;
    }));
    const auto direct = study_tuning(setup, setup.chosen, last);
    REQUIRE(direct->answer->crossings.size() == finder.study()->answer->crossings.size());
    CHECK(direct->answer->crossings[0].at == finder.study()->answer->crossings[0].at);  // same bits
    CHECK_FALSE(finder.refresh(bench, last));  // nothing is worked out anew while nothing changes
}

TEST_CASE("the curve of a setup that changed is drawn anew") {
    Workbench bench(ReadSetup{Document{short_setup(), {}, {}, {}}, {}});
    bench.refresh();
    TuneFinder finder([] {});
    const TuneQuestion question = question_of(bench.document().setup, "margin", "");
    REQUIRE(wait_until(finder, bench, question, [](const TuneStudy&) { return true; }));
    const double before = *finder.study()->now.value;
    DeskRequests change;
    change.edits.emplace_back(SetField{question.varied.part, "back_focus_mm", 118.0});
    bench.carry_out(change);
    bench.refresh();
    CHECK(wait_until(finder, bench, question,
                     [&](const TuneStudy& study) { return *study.now.value != before; }));
}
