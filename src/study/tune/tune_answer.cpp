#include "study/tune/tune_answer.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/tune/bracketed_root.hpp"

namespace beamfork {

namespace {

class Solver {
public:
    Solver(Tuner& tuner, const TuneCurve& curve, double wanted, const GivenUp& is_given_up)
        : tuner_(tuner),
          curve_(curve),
          is_given_up_(is_given_up),
          width_((tuner.watched().is_traced ? 1e-5 : 1e-10) * (curve.range.high - curve.range.low)),
          height_(height_of(curve)) {
        answer_.wanted = wanted;
    }

    TuneAnswer solve() {
        for (const TuneCurve::Run& run : curve_.runs)
            follow(run);
        note_jumps();
        if (answer_.crossings.empty()) find_nearest();
        return std::move(answer_);
    }

private:
    [[nodiscard]] double off(const TunePoint& point) const { return *point.value - answer_.wanted; }

    void add_crossing(double at, bool is_rising) {
        const TunePoint point = tuner_.at(at);
        if (!point.value) return;
        answer_.crossings.push_back(
            {at, *point.value, point.margin.value_or(Millimetres{}), is_rising});
    }

    // Counted rays come and go one by one: a curve of them is a flight of stairs, each lower than this. A step that stands
    // out is no stair; the curve has found it and ends its run there.
    [[nodiscard]] double stair(const TunePoint& a, const TunePoint& b) const {
        const double change = std::abs(off(a) - off(b));
        if (!tuner_.watched().is_traced) return std::max(2 * tuner_.watched().grain, 0.01 * change);
        constexpr double of_the_curve = 0.01;
        return std::max({2 * tuner_.watched().grain, change / 2, of_the_curve * height_});
    }

    [[nodiscard]] static double height_of(const TuneCurve& curve) {
        double low = std::numeric_limits<double>::infinity();
        double high = -low;
        for (const TunePoint& point : curve.points) {
            if (!point.value) continue;
            low = std::min(low, *point.value);
            high = std::max(high, *point.value);
        }
        return std::max(0.0, high - low);
    }

    // The crossing between two neighbours of a run, whose results lie on both sides of the wanted one.
    double cross(const TunePoint& a, const TunePoint& b) {
        const auto value = [&](double at) {
            const auto found = tuner_.at(at).value;
            return found ? *found - answer_.wanted : off(a);
        };
        const Bracket left = narrow_bracket(value, {a.at, b.at, off(a), off(b)}, width_);
        const double height = std::abs(left.at_high - left.at_low);
        if (height > stair(a, b)) {
            answer_.jumps.push_back(left.middle());
        } else {
            add_crossing(left.middle(), off(b) > off(a));
        }
        return left.middle();
    }

    void follow(const TuneCurve::Run& run) {
        const auto& points = curve_.points;
        const std::size_t last = run.end - 1;
        const auto is_more = [&](std::size_t i) { return off(points[i]) >= 0; };
        // An end that has the wanted result to the digit is no change of sign.
        const auto touches = [&](std::size_t end, std::size_t neighbour) {
            return off(points[end]) == 0 && is_more(neighbour);
        };
        if (touches(run.first, std::min(run.first + 1, last)))
            add_crossing(points[run.first].at, true);
        double begun = points[run.first].at;
        for (std::size_t i = run.first; i < last && !is_over(); ++i) {
            if (is_more(i) == is_more(i + 1)) continue;
            const double at = cross(points[i], points[i + 1]);
            if (is_more(i)) answer_.at_least.push_back({begun, at});
            begun = at;
        }
        if (is_more(last)) answer_.at_least.push_back({begun, points[last].at});
        if (last > run.first && touches(last, last - 1)) add_crossing(points[last].at, false);
    }

    [[nodiscard]] bool is_over() const { return is_given_up_ && is_given_up_(); }

    void note_jumps() {
        for (std::size_t i = 0; i + 1 < curve_.runs.size(); ++i) {
            const std::size_t last = curve_.runs[i].end - 1;
            if (curve_.runs[i + 1].first != last + 1) continue;  // there is nothing between
            const TunePoint& a = curve_.points[last];
            const TunePoint& b = curve_.points[last + 1];
            if (off(a) * off(b) < 0) answer_.jumps.push_back((a.at + b.at) / 2);
        }
    }

    // The place of least distance, narrowed between its neighbours by golden sections (J. Kiefer, Proc. Amer. Math.
    // Soc. 4, 502-506, 1953, from memory).
    void find_nearest() {
        const TunePoint* best = nullptr;
        for (const TunePoint& point : curve_.points) {
            if (!point.value) continue;
            if (best == nullptr || std::abs(off(point)) < std::abs(off(*best))) best = &point;
        }
        if (best == nullptr) return;
        TunePoint nearest = *best;
        const auto index = static_cast<std::size_t>(best - curve_.points.data());
        double low = index > 0 ? curve_.points[index - 1].at : best->at;
        double high = index + 1 < curve_.points.size() ? curve_.points[index + 1].at : best->at;
        const double golden = (std::sqrt(5.0) - 1) / 2;
        const auto look = [&](double at) {
            const TunePoint point = tuner_.at(at);
            const double distance =
                point.value ? std::abs(off(point)) : std::numeric_limits<double>::infinity();
            if (distance < std::abs(off(nearest))) nearest = point;
            return distance;
        };
        const int sections = tuner_.watched().is_traced ? 12 : 50;
        for (int i = 0; i < sections && high - low > width_ && !is_over(); ++i) {
            const double left = high - golden * (high - low);
            const double right = low + golden * (high - low);
            if (look(left) <= look(right)) {
                high = right;
            } else {
                low = left;
            }
        }
        answer_.nearest = nearest;
        if (std::abs(off(nearest)) > tuner_.watched().grain) return;
        answer_.crossings.push_back(
            {nearest.at, *nearest.value, nearest.margin.value_or(Millimetres{}), true});
    }

    Tuner& tuner_;
    const TuneCurve& curve_;
    const GivenUp& is_given_up_;
    double width_;
    double height_;  ///< of the curve, in the result's unit
    TuneAnswer answer_;
};

}  // namespace

TuneAnswer
solve_for(Tuner& tuner, const TuneCurve& curve, double wanted, const GivenUp& is_given_up) {
    return Solver(tuner, curve, wanted, is_given_up).solve();
}

}  // namespace beamfork
