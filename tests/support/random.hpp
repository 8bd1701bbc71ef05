// Random numbers for property tests: the same seed gives the same numbers on every machine (the standard library's
// distributions do not promise that).
#pragma once

#include <cstdint>
#include <random>
#include <vector>

class Random {
public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}

    double between(double low, double high) {
        constexpr double two_to_53 = 9007199254740992.0;
        return low + (high - low) * (static_cast<double>(engine_() >> 11) / two_to_53);
    }
    /// 0 .. count - 1
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    bool chance(double probability) { return between(0, 1) < probability; }
    template <class T>
    const T& one_of(const std::vector<T>& values) {
        return values[below(values.size())];
    }

private:
    std::mt19937_64 engine_;
};
