// What is lit on one line from a point of the pupil to its rim: stretches between distances from that point.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

namespace beamfork {

/// Distances from where the line starts.
struct Stretch {
    double from = 0;
    double to = 0;
    [[nodiscard]] bool is_empty() const { return !(to > from); }
    /// Times the step in azimuth: the area.
    [[nodiscard]] double area() const { return (to * to - from * from) / 2; }
    /// Likewise its moment about the point where the line starts.
    [[nodiscard]] double moment() const { return (to * to * to - from * from * from) / 3; }
};

inline Stretch common(const Stretch& a, const Stretch& b) {
    return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

/// What is still lit on one line.
class LitStretches {
public:
    explicit LitStretches(double end) : count_(1) { stretches_[0] = {0, end}; }

    /// Darkens a stretch; how much of it was lit, as Stretch::area.
    double darken(const Stretch& dark) {
        if (dark.is_empty()) return 0;
        double taken = 0;
        const std::size_t before = count_;
        for (std::size_t i = 0; i < before; ++i) {
            Stretch& lit = stretches_.at(i);
            const Stretch lost = common(lit, dark);
            if (lost.is_empty()) continue;
            taken += lost.area();
            const Stretch rest{lost.to, lit.to};
            lit.to = lost.from;
            if (rest.is_empty()) continue;
            if (lit.is_empty()) {
                lit = rest;
            } else if (count_ < stretches_.size()) {
                stretches_.at(count_++) = rest;
            }
        }
        return taken;
    }
    [[nodiscard]] bool touches(const Stretch& stretch) const {
        return std::any_of(stretches_.begin(),
                           stretches_.begin() + static_cast<std::ptrdiff_t>(count_),
                           [&](const Stretch& lit) { return !common(lit, stretch).is_empty(); });
    }
    template <class Visit>
    void each(const Visit& visit) const {
        for (std::size_t i = 0; i < count_; ++i) {
            if (!stretches_.at(i).is_empty()) visit(stretches_.at(i));
        }
    }

private:
    std::array<Stretch, 8> stretches_;  // more obstructions than any telescope has
    std::size_t count_;
};

}  // namespace beamfork
