// Paired rounds: every round runs every variant once, in random order, so that a machine that is busy with other things
// slows all of them alike. What counts is the median over the rounds of each round's ratio.
#pragma once

#include <algorithm>
#include <chrono>
#include <functional>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

namespace bench {

struct Variant {
    std::string name;
    std::function<void()> run;
    std::vector<double> seconds{};  ///< of each round
};

inline double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// One round for each iteration. Tells "<name>_x": how many times as fast as the first variant.
inline void run_rounds(benchmark::State& state, std::vector<Variant>& variants) {
    std::mt19937_64 random(1);
    std::vector<std::size_t> order(variants.size());
    std::iota(order.begin(), order.end(), 0U);
    for (Variant& variant : variants)
        variant.run();  // warm
    for (auto _ : state) {
        std::shuffle(order.begin(), order.end(), random);
        for (const std::size_t i : order) {
            const auto begin = std::chrono::steady_clock::now();
            variants[i].run();
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
            variants[i].seconds.push_back(took.count());
        }
    }
    for (const Variant& variant : variants) {
        std::vector<double> ratios;
        for (std::size_t i = 0; i < variant.seconds.size(); ++i)
            ratios.push_back(variants[0].seconds[i] / variant.seconds[i]);
        state.counters[variant.name + "_x"] = median(ratios);
    }
}

}  // namespace bench
