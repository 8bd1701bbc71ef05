// A watched result over the range of one number: the curve, where it breaks off or jumps, and where focus is reached.
#pragma once

#include <functional>

#include "study/tune/tune.hpp"

namespace beamfork {

/// The range that is looked at. Where the ends are a factor of 50 or more apart, steps are even in the logarithm.
struct TuneRange {
    double low = 0;
    double high = 1;
    [[nodiscard]] bool is_logarithmic() const { return low > 0 && high >= 50 * low; }
    /// The value at a share of the way, 0 to 1, and back.
    [[nodiscard]] double at(double share) const;
    [[nodiscard]] double share_of(double value) const;
    bool operator==(const TuneRange&) const = default;
};
/// What people own, widened so that the present value lies in it; or all that is accepted.
TuneRange usual_range(const Tunable& tunable);
TuneRange accepted_range_of(const Tunable& tunable);

struct TunePoint {
    double at = 0;
    std::optional<double> value;  ///< nothing: the setup is impossible there or has no such result
    std::optional<Millimetres> margin;  ///< nothing: the setup is impossible there
};

struct TuneInterval {
    double low = 0;
    double high = 0;
};

struct TuneCurve {
    TuneRange range;
    std::vector<TunePoint> points;  ///< by rising `at`
    /// Runs of points to be joined by lines, as indices: first and one behind the last. Between two runs the curve
    /// jumps or is not there.
    struct Run {
        std::size_t first = 0;
        std::size_t end = 0;
    };
    std::vector<Run> runs;
    std::vector<TuneInterval> in_focus;  ///< where the margin is not negative
    std::string why_not;  ///< why the setup is impossible somewhere; empty: it is nowhere
};

/// Whether nobody waits for the answer any more.
using GivenUp = std::function<bool()>;

/// Evaluates one result for one setup whose number changes; keeps its own copy, so that it may live in another thread.
class Tuner {
public:
    Tuner(
        Setup setup, const Choice& choice, Varied varied, Watched watched, TuneEffort effort = {});
    /// `why`, where given, is told why there is no such setup.
    TunePoint at(double value, std::string* why = nullptr);
    /// The focus margin alone, which is cheap; nothing where the setup is impossible.
    std::optional<Millimetres> margin_at(double value);
    [[nodiscard]] const WatchedInfo& watched() const { return *watched_; }

private:
    Result<TunedResult> result(double value, Watched watched);

    Setup setup_;
    Choice choice_;
    Varied varied_;
    const WatchedInfo* watched_;
    TuneEffort effort_;
};

/// At `steps` even steps, with more points where it bends, breaks off or jumps. Given up: what there is so far.
TuneCurve
tune_curve(Tuner& tuner, const TuneRange& range, int steps = 60, const GivenUp& is_given_up = {});

}  // namespace beamfork
