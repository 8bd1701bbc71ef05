#include "scene/film/tour_film.hpp"

#include "base/contract.hpp"
#include "scene/picture/pulled_apart.hpp"

namespace beamfork {

Result<Film> tour_film(const Tour& tour,
                       std::span<const TourQuote> quotes,
                       const TourScene& scene,
                       TourPace pace) {
    BEAMFORK_EXPECTS(!tour.steps.empty());
    std::vector<TourFrame> told;
    for (std::size_t i = 0; i < tour.steps.size(); ++i) {
        auto one = tour_frame({&tour, 1}, tour.name, static_cast<int>(i) + 1, quotes);
        if (!one) return tl::make_unexpected(one.error());
        told.push_back(std::move(*one));
    }
    const auto at = [tour, told, scene, pace](double second) {
        const TourMoment moment = tour_at(tour, second, scene.frames, scene.aspect, pace);
        FilmMoment seen;
        seen.camera = moment.camera;
        seen.told = told[moment.step];
        seen.is_revealed = moment.revealed > 0;
        if (moment.step < scene.frames.own.size()) seen.own = &scene.frames.own[moment.step];
        seen.emphasis = emphasis_at(tour, moment, scene.setup);
        seen.options = shown_in(tour.steps[moment.step], scene.before);
        const TourStep& last = tour.steps[moment.step == 0 ? 0 : moment.step - 1];
        seen.options.apart =
            glm::mix(shown_in(last, scene.before).apart, seen.options.apart, moment.flown);
        return seen;
    };
    return Film{tour_duration(tour, pace), at};
}

}  // namespace beamfork
