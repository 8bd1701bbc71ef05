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

TourStep told_of(ToldInstead instead, TourStep step) {
    step.instead = std::move(instead);
    return step;
}

TourStep showing(std::set<TourShow> show, TourStep step) {
    step.show = std::move(show);
    return step;
}

TourStep seen_from(const TourCamera& camera, TourStep step) {
    step.camera = camera;
    return step;
}

TourStep asking_number(const NumberQuestion& number, TourStep step) {
    TourQuestion asks{number.question, {}, 0, number.quote};
    const double ten = std::pow(10.0, number.decimals);
    double before = 0;
    for (const double share : number.shares) {
        const double answer = std::round(share * number.value * ten) / ten;
        if (answer <= before) return step;
        before = answer;
        asks.answers.push_back(share == 1 ? number.quote
                                          : format_number(answer, number.decimals) + number.unit);
    }
    return asking(std::move(asks), std::move(step));
}

TourCamera close_to(const Point& at, double radius) {
    constexpr double distance_in_radii = 13;
    return {{at.x, at.y, at.z}, distance_in_radii * radius, 52, 14};
}

std::string plainly(const std::string& words) {
    std::string plain;
    for (const char letter : words)
        plain += letter == '{' ? "{{" : std::string(1, letter);
    return plain;
}

std::string millimetres(Millimetres length) { return format_number(length.value, 1) + "\u00A0mm"; }

}  // namespace beamfork
