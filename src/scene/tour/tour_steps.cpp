#include "scene/tour/tour_steps.hpp"

#include <cmath>

#include "base/text.hpp"

namespace beamfork {

TourStep lit_by(std::vector<std::string> lit, TourStep step) {
    step.lit = std::move(lit);
    return step;
}

TourStep asking(TourQuestion asks, TourStep step) {
    step.asks = std::move(asks);
    return step;
}

TourStep showing(std::set<TourShow> show, TourStep step) {
    step.show = std::move(show);
    return step;
}

TourStep asking_number(const NumberQuestion& number, TourStep step) {
    TourQuestion asks{number.question, {}, 0, number.quote};
    double before = 0;
    for (const double share : number.shares) {
        const double answer =
            std::round(share * number.value / number.rounded_to) * number.rounded_to;
        if (answer <= before) return step;
        before = answer;
        asks.answers.push_back(format_number(answer, number.rounded_to < 1 ? 1 : 0) + number.unit);
    }
    return asking(std::move(asks), std::move(step));
}

}  // namespace beamfork
