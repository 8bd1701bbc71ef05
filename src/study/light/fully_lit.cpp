#include "study/light/fully_lit.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "trace/sampling.hpp"

namespace beamfork {

namespace {

std::vector<glm::dvec2> rim_within() {
    auto pupil_rim = rim(48);
    // A hair inside, so that rounding does not put a ray outside the objective itself.
    for (glm::dvec2& place : pupil_rim)
        place *= 1 - 1e-9;
    return pupil_rim;
}

// Asks one direction after the other only whether the lit field ends before it did in those before.
class Search {
public:
    explicit Search(LitPath& way) : way_(way) {}

    double run() {
        // Far from each other at first, so that the shortest is known soon and few are followed to their end.
        constexpr int directions = 24;
        constexpr int far_apart = 7;
        for (int i = 0; i < directions; ++i)
            look(static_cast<double>((i * far_apart) % directions) / directions);
        for (double step = 0.5 / directions; shortest_ < 1 && step > 0.5 / 360; step /= 2) {
            const double here = turn_;
            look(here - step);
            look(here + step);
        }
        return shortest_;
    }

private:
    // Openings are convex and so is the beam: light is whole where the whole rim of the pupil passes.
    [[nodiscard]] bool is_lit(double turn, double fraction) {
        const double angle = 2 * std::numbers::pi * turn;
        const auto& ends =
            way_.trace(fraction * glm::dvec2{std::cos(angle), std::sin(angle)}, pupil_rim_);
        return std::all_of(ends.fate.begin(), ends.fate.end(),
                           [](RayFate fate) { return fate == RayFate::reached; });
    }

    void look(double turn) {
        if (shortest_ == 0 || is_lit(turn, shortest_)) return;
        turn_ = turn;
        double lit = 0.75 * shortest_;
        if (!is_lit(turn, lit)) shortest_ = std::exchange(lit, 0);
        if (lit == 0 && !is_lit(turn, 0)) {
            shortest_ = 0;
            return;
        }
        while (shortest_ - lit > 1.0 / 4096) {
            const double middle = (lit + shortest_) / 2;
            (is_lit(turn, middle) ? lit : shortest_) = middle;
        }
        shortest_ = lit;
    }

    LitPath& way_;
    std::vector<glm::dvec2> pupil_rim_ = rim_within();
    double shortest_ = 1;
    double turn_ = 0;  ///< the direction in which it was found
};

}  // namespace

double fully_lit_fraction(LitPath& way) { return Search(way).run(); }

}  // namespace beamfork
