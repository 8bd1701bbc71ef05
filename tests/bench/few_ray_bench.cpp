// From a slider's move to the light of both eyes at every field point (clipping.hpp): few rays, whose edges in the pupil are
// followed, against counted rays. Both answers are held against many more rays first.
#include <algorithm>
#include <ctime>
#include <stdexcept>

#include "base/two_at_a_time.hpp"
#include "desk/open_setup.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/spacer.hpp"
#include "rounds.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/light/clipping.hpp"

using namespace beamfork;
using namespace bench;

namespace {

constexpr ClippingEffort few{192, LightForm::few_rays};
/// So many that the worst point of the demos is within half a percent, too.
constexpr ClippingEffort counted{1024};
constexpr ClippingEffort many{32768};
constexpr double agreed = 0.005;  // of the objective's light, at every field point

Setup opened(const std::string& demo) {
    const auto read = open_named(demo);
    if (!read) throw std::runtime_error(to_text(read.error()));
    return read->document.setup;
}

// Two setups, the second as if the first had been edited: its first spacer or its eyepieces are a little longer.
std::array<Setup, 2> edited(const Setup& setup) {
    std::array both{setup, setup};
    for (Part& part : both[1].parts) {
        if (auto* spacer = part.body.as<Spacer>()) {
            spacer->length = spacer->length + Millimetres{0.1};
            return both;
        }
        if (auto* pair = part.body.as<EyepiecePair>())
            pair->barrel_length = pair->barrel_length + Millimetres{0.1};
    }
    return both;
}

std::array<EyeClipping, 2> light_of(const Setup& setup, ClippingEffort effort) {
    const auto focus = solved_focus(setup, setup.chosen);
    const Train train = focused_train(setup, setup.chosen, focus.value()).value();
    std::array<EyeClipping, 2> eyes;
    two_at_a_time(2,
                  [&](std::size_t side) { eyes[side] = clipping(train, both_eyes[side], effort); });
    return eyes;
}

double worst_point(const std::array<EyeClipping, 2>& found,
                   const std::array<EyeClipping, 2>& settled) {
    double worst = 0;
    for (std::size_t side = 0; side < 2; ++side) {
        if (found[side].points.size() != settled[side].points.size())
            throw std::runtime_error("not the settled points");
        for (std::size_t i = 0; i < found[side].points.size(); ++i) {
            worst = std::max(
                worst, std::abs(found[side].points[i].relative - settled[side].points[i].relative));
        }
    }
    return worst;
}

double of_95_percent(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() * 95 / 100];
}

void light_by_few_rays(benchmark::State& state, const std::string& demo) {
    const auto setups = edited(opened(demo));
    double worst = 0;
    for (const Setup& setup : setups)
        worst = std::max(worst, worst_point(light_of(setup, few), light_of(setup, many)));
    if (worst > agreed) throw std::runtime_error("few rays do not tell the light");
    std::size_t edit = 0;
    const auto after_edit = [&](ClippingEffort effort) {
        benchmark::DoNotOptimize(light_of(setups.at(++edit % 2), effort));
    };
    std::vector<Variant> variants{{"counted", [&] { after_edit(counted); }},
                                  {"few_rays", [&] { after_edit(few); }}};
    run_rounds(state, variants);
    const auto& took = variants[1].seconds;
    state.counters["worst_point_percent"] = 100 * worst;
    state.counters["least_ms"] = 1e3 * *std::min_element(took.begin(), took.end());
    state.counters["median_ms"] = 1e3 * median(took);
    state.counters["of_95_percent_ms"] = 1e3 * of_95_percent(took);
    state.counters["counted_median_ms"] = 1e3 * median(variants[0].seconds);
    state.counters["counted_of_95_percent_ms"] = 1e3 * of_95_percent(variants[0].seconds);
}

double thread_seconds() {
    std::timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

// What one thread works for it, whatever else the machine does: focus, train and the light of one eye.
void work_of_few_rays(benchmark::State& state, const std::string& demo) {
    const auto setups = edited(opened(demo));
    std::array<std::vector<double>, 2> took;
    std::size_t edit = 0;
    for (auto _ : state) {
        for (const bool is_few : {true, false}) {
            const double begin = thread_seconds();
            const Setup& setup = setups.at(++edit / 2 % 2);
            const auto focus = solved_focus(setup, setup.chosen);
            const Train train = focused_train(setup, setup.chosen, focus.value()).value();
            benchmark::DoNotOptimize(clipping(train, Eye::left, is_few ? few : counted));
            took.at(is_few ? 0 : 1).push_back(thread_seconds() - begin);
        }
    }
    for (const bool is_few : {true, false}) {
        const std::string name = is_few ? "few_rays" : "counted";
        const auto& seconds = took.at(is_few ? 0 : 1);
        state.counters[name + "_least_ms"] =
            1e3 * *std::min_element(seconds.begin(), seconds.end());
        state.counters[name + "_median_ms"] = 1e3 * median(seconds);
        state.counters[name + "_of_95_percent_ms"] = 1e3 * of_95_percent(seconds);
    }
}

}  // namespace

BENCHMARK_CAPTURE(work_of_few_rays, refractor, "1-short-of-focus")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(work_of_few_rays, newtonian, "4-fast-newtonian")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(work_of_few_rays, moving_mirror, "5-moving-mirror")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(light_by_few_rays, refractor, "1-short-of-focus")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(light_by_few_rays, newtonian, "4-fast-newtonian")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(light_by_few_rays, moving_mirror, "5-moving-mirror")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
