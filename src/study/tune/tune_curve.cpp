#include "study/tune/tune_curve.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/tune/bracketed_root.hpp"

namespace beamfork {

double TuneRange::at(double share) const {
    if (share <= 0) return low;
    if (share >= 1) return high;
    return is_logarithmic() ? low * std::pow(high / low, share) : std::lerp(low, high, share);
}

double TuneRange::share_of(double value) const {
    if (high <= low) return 0;
    return is_logarithmic() ? std::log(std::max(value, low / 1000) / low) / std::log(high / low)
                            : (value - low) / (high - low);
}

TuneRange usual_range(const Tunable& tunable) {
    const FieldInfo& field = tunable.field;
    return {std::min(field.usual_low, tunable.now), std::max(field.usual_high, tunable.now)};
}

TuneRange accepted_range_of(const Tunable& tunable) {
    return {tunable.field.low, tunable.field.high};
}

Tuner::Tuner(Setup setup, const Choice& choice, Varied varied, Watched watched, TuneEffort effort)
    : setup_(std::move(setup)),
      choice_(choice),
      varied_(std::move(varied)),
      watched_(&info_of(watched)),
      effort_(effort) {}

Result<TunedResult> Tuner::result(double value, Watched watched) {
    PartBody& held = setup_.parts.at(varied_.part).body;
    auto body = with_field(held, varied_.key, value);
    if (!body) return tl::make_unexpected(std::move(body.error()));
    std::swap(held, *body);
    auto found = tuned_result(setup_, choice_, watched, effort_);
    std::swap(held, *body);
    if (found && found->is_behind_image)
        return fail(ErrorCode::impossible, "a shifter's lens would stand behind the image");
    if (found && found->lens_in_glass)
        return fail(ErrorCode::impossible, "a lens would stand in glass");
    return found;
}

TunePoint Tuner::at(double value, std::string* why) {
    const auto found = result(value, watched_->watched);
    if (found) return {value, found->value, found->margin};
    if (why != nullptr) *why = found.error().what;
    return {value, std::nullopt, std::nullopt};
}

std::optional<Millimetres> Tuner::margin_at(double value) {
    const auto found = result(value, Watched::margin);
    return found ? std::optional(found->margin) : std::nullopt;
}

namespace {

constexpr double finest_share = 1e-5;  // of the range: what a screen or a ruler cannot tell

// Points by rising place, with marks where no line may be drawn.
class CurveMaker {
public:
    CurveMaker(Tuner& tuner, const TuneRange& range, const GivenUp& is_given_up)
        : tuner_(tuner), is_given_up_(is_given_up) {
        curve_.range = range;
    }

    TuneCurve make(int steps) {
        for (int i = 0; i <= steps && !is_over(); ++i)
            curve_.points.push_back(look(static_cast<double>(i) / steps));
        if (!tuner_.watched().is_traced) {
            constexpr int rounds = 3;  // each halves the steps where the curve bends
            for (int i = 0; i < rounds; ++i)
                smooth_bends();
        }
        find_ends();
        find_jumps();
        join();
        find_focus();
        return std::move(curve_);
    }

private:
    [[nodiscard]] bool is_over() const { return is_given_up_ && is_given_up_(); }

    TunePoint look(double share) { return tuner_.at(curve_.range.at(share), &curve_.why_not); }
    [[nodiscard]] double share(const TunePoint& point) const {
        return curve_.range.share_of(point.at);
    }
    TunePoint between(const TunePoint& a, const TunePoint& b) {
        return look((share(a) + share(b)) / 2);
    }
    void insert(TunePoint point) {
        const auto place =
            std::lower_bound(curve_.points.begin(), curve_.points.end(), point.at,
                             [](const TunePoint& known, double at) { return known.at < at; });
        if (place != curve_.points.end() && place->at == point.at) return;
        curve_.points.insert(place, point);
    }

    [[nodiscard]] double span() const {
        double low = std::numeric_limits<double>::infinity();
        double high = -std::numeric_limits<double>::infinity();
        for (const TunePoint& point : curve_.points) {
            if (!point.value) continue;
            low = std::min(low, *point.value);
            high = std::max(high, *point.value);
        }
        return std::max(0.0, high - low);
    }

    void smooth_bends() {
        constexpr double visible = 0.003;  // of the curve's height
        const double least = visible * span();
        const std::vector<TunePoint> old = curve_.points;
        for (std::size_t i = 1; i + 1 < old.size() && !is_over(); ++i) {
            if (!old[i - 1].value || !old[i].value || !old[i + 1].value) continue;
            const double before = share(old[i]) - share(old[i - 1]);
            const double all = share(old[i + 1]) - share(old[i - 1]);
            const double straight = std::lerp(*old[i - 1].value, *old[i + 1].value, before / all);
            if (std::abs(*old[i].value - straight) <= least) continue;
            insert(between(old[i - 1], old[i]));
            insert(between(old[i], old[i + 1]));
        }
    }

    // The last places at which there still is a value.
    void find_ends() {
        const std::vector<TunePoint> old = curve_.points;
        for (std::size_t i = 0; i + 1 < old.size() && !is_over(); ++i) {
            if (old[i].value.has_value() == old[i + 1].value.has_value()) continue;
            TunePoint there = old[i].value ? old[i] : old[i + 1];
            TunePoint gone = old[i].value ? old[i + 1] : old[i];
            while (std::abs(share(there) - share(gone)) > finest_share) {
                const TunePoint middle = between(there, gone);
                (middle.value ? there : gone) = middle;
            }
            insert(there);
            insert(gone);
        }
    }

    [[nodiscard]] static double step(const std::vector<TunePoint>& points, std::size_t i) {
        if (i + 1 >= points.size() || !points[i].value || !points[i + 1].value) return 0;
        return std::abs(*points[i + 1].value - *points[i].value);
    }

    // A step much larger than its neighbours that does not shrink with its width.
    void find_jumps() {
        const std::vector<TunePoint> old = curve_.points;
        const double least = std::max(0.01 * span(), 4 * tuner_.watched().grain);
        for (std::size_t i = 0; i + 1 < old.size() && !is_over(); ++i) {
            const double height = step(old, i);
            const double beside = std::max(i > 0 ? step(old, i - 1) : 0, step(old, i + 1));
            if (height < least || height < 3 * beside) continue;
            TunePoint low = old[i];
            TunePoint high = old[i + 1];
            while (share(high) - share(low) > finest_share) {
                const TunePoint middle = between(low, high);
                if (!middle.value) break;
                const bool is_left =
                    std::abs(*middle.value - *low.value) > std::abs(*high.value - *middle.value);
                (is_left ? high : low) = middle;
            }
            insert(low);
            insert(high);
            if (std::abs(*high.value - *low.value) > height / 2) jumps_.push_back(low.at);
        }
    }

    void join() {
        const auto& points = curve_.points;
        for (std::size_t i = 0; i < points.size(); ++i) {
            if (!points[i].value) continue;
            const std::size_t first = i;
            const auto breaks = [&] {
                return std::find(jumps_.begin(), jumps_.end(), points[i].at) != jumps_.end();
            };
            while (!breaks() && i + 1 < points.size() && points[i + 1].value)
                ++i;
            curve_.runs.push_back({first, i + 1});
        }
    }

    // Where the margin passes zero between two neighbours; the place with a margin where the other has none.
    double edge_of_focus(const TunePoint& a, const TunePoint& b) {
        if (!a.margin || !b.margin) return a.margin ? a.at : b.at;
        const auto margin = [&](double at) {
            return tuner_.margin_at(at).value_or(Millimetres{-1}).value;
        };
        const double width = finest_share * 1e-3 * (curve_.range.high - curve_.range.low);
        return narrow_bracket(margin, {a.at, b.at, a.margin->value, b.margin->value}, width)
            .middle();
    }

    void find_focus() {
        const auto is_in = [](const TunePoint& point) {
            return point.margin
                   && point.margin->value >= -1e-9;  // rounding: an exact fit still reaches
        };
        const auto& points = curve_.points;
        for (std::size_t i = 0; i < points.size() && !is_over(); ++i) {
            if (!is_in(points[i])) continue;
            TuneInterval found{points[i].at, points[i].at};
            if (i > 0) found.low = edge_of_focus(points[i - 1], points[i]);
            while (i + 1 < points.size() && is_in(points[i + 1]))
                ++i;
            found.high =
                i + 1 < points.size() ? edge_of_focus(points[i], points[i + 1]) : points[i].at;
            curve_.in_focus.push_back(found);
        }
    }

    Tuner& tuner_;
    const GivenUp& is_given_up_;
    TuneCurve curve_;
    std::vector<double> jumps_;  ///< the curve's last place before each
};

}  // namespace

TuneCurve tune_curve(Tuner& tuner, const TuneRange& range, int steps, const GivenUp& is_given_up) {
    BEAMFORK_EXPECTS(range.high > range.low && steps > 0);
    return CurveMaker(tuner, range, is_given_up).make(steps);
}

}  // namespace beamfork
