// Every train of a full drawer judged for focus, factor, margin and joints, against the least that such a search can cost:
// the lengths of each train added up. What the plain sums give without a lens is held against the plan first.
#include <numeric>
#include <stdexcept>

#include "base/assets.hpp"
#include "document/drawer_file.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/spacer.hpp"
#include "plan/plan.hpp"
#include "rounds.hpp"

#include <fmt/format.h>

using namespace beamfork;
using namespace bench;

namespace {

// The shipped drawer with as many more extensions and pairs, one observer and target: a train is one case.
Drawer full_drawer(int extensions, int pairs) {
    const auto text = asset("assets/drawers/harrier-hill.drawer.toml");
    Drawer drawer = read_drawer(std::string(text.value()), "harrier-hill").value().drawer;
    std::erase_if(drawer.parts, [](const DrawerPart& held) {
        return held.part.name == "Youngster" || held.part.name == "Church clock";
    });
    for (int i = 0; i < extensions; ++i) {
        Spacer tube;
        tube.length = Millimetres{3.0 + i};
        tube.mount = {Fitting::m42_female, Fitting::m42_male, {}};
        drawer.parts.push_back({{fmt::format("extension {}", i), tube, {}}});
    }
    for (int i = 0; i < pairs; ++i) {
        EyepiecePair pair;
        pair.focal_length = Millimetres{6 + 0.5 * i};
        pair.mount.front = Fitting::barrel_125;
        drawer.parts.push_back({{fmt::format("pair {}", i), pair, {}}});
    }
    return drawer;
}

struct Laid {
    std::vector<std::array<double, 8>> lengths;  ///< of each chain, piece by piece
};

// For each train one sum of its pieces, as a plain search would have it.
double added_up(const Plan& plan, const Laid& laid) {
    double sum = 0;
    for (const PlannedTrain& train : plan.trains) {
        const auto& pieces = laid.lengths[train.chain];
        const Head& head = plan.parts.heads[plan.chains[train.chain].head];
        const Tube& tube = plan.parts.tubes[plan.chains[train.chain].tube];
        const double left = std::accumulate(
            pieces.begin(), pieces.end(), *tube.back_focus[0] - head.endings[train.place][0].needed,
            std::minus<>());
        sum += left > 0 ? left : 0;
    }
    return sum;
}

Laid laid_out(const Plan& plan) {
    Laid laid;
    for (const Chain& chain : plan.chains) {
        std::array<double, 8> pieces{};
        if (chain.parts.size() > pieces.size()) throw std::runtime_error("a chain of many parts");
        for (std::size_t i = 0; i < chain.parts.size(); ++i)
            pieces[i] = plan.parts.chain[chain.parts[i]].length;
        laid.lengths.push_back(pieces);
    }
    return laid;
}

// Without a lens and by drawtube the margin inward is what the sum leaves.
void check(const Plan& plan, const Laid& laid) {
    std::size_t checked = 0;
    for (const PlannedTrain& train : plan.trains) {
        const Tube& tube = plan.tube_of(train);
        if (plan.chain_of(train).axis.lenses > 0
            || plan.part(tube.telescope).name == "Club Cassegrain")
            continue;
        double left = *tube.back_focus[0] - plan.head_of(train).endings[train.place][0].needed;
        for (const double length : laid.lengths[train.chain])
            left -= length;
        if (std::abs(left - plan.focus(train, 0)->margin_in) > 1e-9)
            throw std::runtime_error("the plan disagrees with a plain sum");
        ++checked;
    }
    if (checked == 0) throw std::runtime_error("nothing to check");
}

void plan_against_sums(benchmark::State& state, int extensions, int pairs) {
    const Drawer drawer = full_drawer(extensions, pairs);
    const Plan plan = plan_trains(drawer).value();
    const Laid laid = laid_out(plan);
    check(plan, laid);
    double kept = 0;
    std::vector<Variant> variants{
        {"sums", [&] { kept += added_up(plan, laid); }},
        {"judged",
         [&] { kept += static_cast<double>(judged_trains(plan.parts, plan.chains).size()); }},
        {"whole", [&] { kept += static_cast<double>(plan_trains(drawer)->trains.size()); }}};
    run_rounds(state, variants);
    benchmark::DoNotOptimize(kept);
    state.counters["trains"] = static_cast<double>(plan.trains.size());
    for (const Variant& variant : variants)
        state.counters[variant.name + "_ms_per_100000"] =
            1e3 * median(variant.seconds) * 1e5 / static_cast<double>(plan.trains.size());
}

}  // namespace

BENCHMARK_CAPTURE(plan_against_sums, plan_of_some, 5, 10)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(plan_against_sums, plan_of_100000, 60, 60)->Unit(benchmark::kMillisecond);
