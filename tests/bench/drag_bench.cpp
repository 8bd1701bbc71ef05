// The path from a slider's move to numbers and picture, on the first demo: how long each stage takes. Each
// benchmark checks its answer before it is timed.
#include <algorithm>
#include <chrono>
#include <stdexcept>

#include "app/check/check.hpp"
#include "base/two_at_a_time.hpp"
#include "desk/open_setup.hpp"
#include "parts/spacer.hpp"
#include "render/offscreen.hpp"
#include "render/renderer.hpp"
#include "scene/picture/picture.hpp"
#include "study/tune/tune_curve.hpp"

#include <benchmark/benchmark.h>

using namespace beamfork;

namespace {

Setup demo_setup() {
    const auto read = open_named("1-short-of-focus");
    if (!read) throw std::runtime_error(to_text(read.error()));
    return read->document.setup;
}

std::size_t index_of_first_spacer(const Setup& setup) {
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (setup.parts[i].body.is<Spacer>()) return i;
    }
    throw std::runtime_error("the demo has no spacer");
}

Report report_of(const Setup& setup, int rays) {
    auto report = make_report(setup, setup.chosen, ClippingEffort{rays});
    if (!report) throw std::runtime_error(to_text(report.error()));
    return *std::move(report);
}

void focus_alone(benchmark::State& state) {
    const Setup setup = demo_setup();
    if (focus_budget(setup, setup.chosen)->reaches)
        throw std::runtime_error("the demo must fall short");
    for (auto _ : state)
        benchmark::DoNotOptimize(focus_budget(setup, setup.chosen));
}

void all_studies(benchmark::State& state) {
    const Setup setup = demo_setup();
    const int rays = static_cast<int>(state.range(0));
    const double coarse = report_of(setup, rays).clipping[0].edge_relative;
    const double fine = report_of(setup, 8192).clipping[0].edge_relative;
    if (std::abs(coarse - fine) > 0.02)
        throw std::runtime_error("too few rays for the edge illumination");
    for (auto _ : state)
        benchmark::DoNotOptimize(report_of(setup, rays));
    state.counters["edge_error_percent"] = 100 * std::abs(coarse - fine);
}

// From a slider's move to the light of both eyes at every field point (clipping.hpp): the focus solved, the train built, every point
// traced. The error is that of the worst point against many rays; the 95th of 100 percent is told beside the mean.
void light_of_both_eyes(benchmark::State& state) {
    Setup setup = demo_setup();
    const ClippingEffort effort{static_cast<int>(state.range(0))};
    const auto light = [&](ClippingEffort rays) {
        const Train train =
            focused_train(setup, setup.chosen, *solved_focus(setup, setup.chosen)).value();
        std::array<EyeClipping, 2> eyes;
        two_at_a_time(
            2, [&](std::size_t side) { eyes[side] = clipping(train, both_eyes[side], rays); });
        return eyes;
    };
    const auto found = light(effort);
    const auto settled = light({32768});
    double worst = 0;
    for (std::size_t side = 0; side < 2; ++side) {
        if (found[side].points.size() != settled[side].points.size())
            throw std::runtime_error("not the settled points");
        for (std::size_t i = 0; i < found[side].points.size(); ++i) {
            worst = std::max(
                worst, std::abs(found[side].points[i].relative - settled[side].points[i].relative));
        }
    }
    if (worst > 0.02) throw std::runtime_error("too few rays");
    std::vector<double> took;
    const std::size_t spacer = index_of_first_spacer(setup);
    for (auto _ : state) {
        auto& length = setup.parts[spacer].body.get<Spacer>().length;
        length = length + Millimetres{took.size() % 2 == 0 ? 0.1 : -0.1};
        const auto begin = std::chrono::steady_clock::now();
        benchmark::DoNotOptimize(light(effort));
        const std::chrono::duration<double, std::milli> spent =
            std::chrono::steady_clock::now() - begin;
        took.push_back(spent.count());
    }
    std::sort(took.begin(), took.end());
    state.counters["worst_point_percent"] = 100 * worst;
    state.counters["least_ms"] = took.front();
    state.counters["median_ms"] = took[took.size() / 2];
    state.counters["of_95_percent_ms"] = took[took.size() * 95 / 100];
}

// Twelve eyepiece pairs, two observers and two targets: 48 combinations.
Setup full_drawer() {
    Setup setup = demo_setup();
    const auto fill = [&](Role role, std::size_t wanted) {
        while (parts_with_role(setup, role).size() > wanted) {
            const auto last = static_cast<std::ptrdiff_t>(parts_with_role(setup, role).back());
            setup.parts.erase(setup.parts.begin() + last);
        }
        while (parts_with_role(setup, role).size() < wanted) {
            const std::size_t last = parts_with_role(setup, role).back();
            setup.parts.insert(setup.parts.begin() + static_cast<std::ptrdiff_t>(last) + 1,
                               Part{setup.parts[last]});
        }
    };
    fill(Role::eyepiece, 12);
    fill(Role::observer, 2);
    fill(Role::target, 2);
    return with_valid_choice(std::move(setup));
}

// What the panel "Tune" draws at each change: one result over the range of one number, 61 points and more where
// it bends.
void tuned_curve(benchmark::State& state, Watched watched) {
    const Setup setup = demo_setup();
    const auto known = tunables(setup, setup.chosen);
    const auto number = find_tunable(setup, known, setup.parts.front().name + ".back_focus_mm");
    if (!number) throw std::runtime_error(to_text(number.error()));
    const auto curve = [&] {
        Tuner tuner(setup, setup.chosen, number->varied, watched);
        return tune_curve(tuner, usual_range(*number));
    };
    const TuneCurve once = curve();
    if (once.points.size() < 61) throw std::runtime_error("too few points");
    if (watched == Watched::margin) {  // each mm of back focus is one of margin inward
        const TunePoint& first = once.points[0];
        const TunePoint& second = once.points[1];
        if (std::abs((*second.value - *first.value) - (second.at - first.at)) > 1e-9)
            throw std::runtime_error("the margin does not follow the back focus");
    }
    for (auto _ : state)
        benchmark::DoNotOptimize(curve());
    state.counters["points"] = static_cast<double>(once.points.size());
}

void reach_of_full_drawer(benchmark::State& state) {
    const Setup setup = full_drawer();
    const auto table = reach_table(setup, setup.chosen);
    if (!table || table->entries.size() != 48) throw std::runtime_error("not 48 combinations");
    for (auto _ : state)
        benchmark::DoNotOptimize(reach_table(setup, setup.chosen));
}

void whole_check(benchmark::State& state, CheckedPairs pairs) {
    const Setup setup = demo_setup();
    const auto checked = check_setup(setup, pairs);
    if (!checked || checked->combinations.size() != (pairs == CheckedPairs::every ? 18U : 1U))
        throw std::runtime_error("not what was to be checked");
    for (auto _ : state)
        benchmark::DoNotOptimize(check_setup(setup, pairs));
    state.counters["combinations"] = static_cast<double>(checked->combinations.size());
}

void picture_data(benchmark::State& state) {
    const Setup setup = demo_setup();
    const Report report = report_of(setup, 192);
    if (build_frame(setup, report).light.empty())
        throw std::runtime_error("a picture without light");
    for (auto _ : state)
        benchmark::DoNotOptimize(build_frame(setup, report));
}

// `share`: of the pixels along each side, while something moves; 0: carefully.
void drawing(benchmark::State& state, float share) {
    const auto context = OffscreenContext::create();
    auto renderer = Renderer::create();
    if (!context || !renderer) throw std::runtime_error("no OpenGL");
    const Setup setup = demo_setup();
    Frame frame = build_frame(setup, report_of(setup, 192));
    PictureSize size{1280, 720};
    if (share > 0) size = draft(size, share, share == 1 ? 1 : share > 0.5F ? 0.5F : 0.25F);
    const Camera camera = standard_view(StandardView::overview, frame, 16.0F / 9);
    for (auto _ : state) {
        ++frame.revision;  // as after an edit: everything is sent anew
        renderer->upload(frame);
        if (!renderer->draw(camera, ViewOptions{}, size)) throw std::runtime_error("not drawn");
        renderer->finish();
    }
}

}  // namespace

BENCHMARK(focus_alone)->Unit(benchmark::kMillisecond);
BENCHMARK(light_of_both_eyes)->Arg(1024)->Arg(2048)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(all_studies)->Arg(192)->Arg(1024)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(tuned_curve, margin, Watched::margin)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(tuned_curve, edge_light, Watched::edge_light)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(tuned_curve, fully_lit, Watched::fully_lit)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(tuned_curve, sharpness, Watched::sharpness)->Unit(benchmark::kMillisecond);
BENCHMARK(reach_of_full_drawer)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(whole_check, chosen_pair, CheckedPairs::chosen)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(whole_check, every_pair, CheckedPairs::every)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK(picture_data)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(drawing, quick, 1)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(drawing, quick_coarser, 0.75F)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(drawing, quick_coarse, 0.5F)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(drawing, careful, 0)->Unit(benchmark::kMillisecond)->UseRealTime();
