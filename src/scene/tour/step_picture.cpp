#include "scene/tour/step_picture.hpp"

#include "document/tour_lit.hpp"
#include "scene/tour/colour_foci.hpp"
#include "scene/tour/ghost_light.hpp"
#include "scene/tour/light_path_ruler.hpp"
#include "scene/tour/star_picture.hpp"

namespace beamfork {

namespace {

std::optional<Frame> frame_of(const TourStep& step,
                              const Setup& setup,
                              const Report& report,
                              const PictureEffort& effort) {
    const auto shows = [&](TourShow show) { return step.show.contains(show); };
    if (shows(TourShow::stars)) return star_picture(setup, report, effort);
    if (shows(TourShow::ruler))
        return ruler_picture(setup, report, lit_parts(step.lit, setup), effort);
    if (shows(TourShow::colours)) return colour_picture(setup, report, effort);
    if (step.instead) return build_frame(setup, report, effort);
    return std::nullopt;
}

std::shared_ptr<const SightImage> sight_of(const Setup& setup, const Report& report) {
    const SightRequest moon{.scene = {SightSubject::moon}, .pixels = 320};
    return std::make_shared<const SightImage>(draw_sight(sights_of(setup, report), moon));
}

}  // namespace

StepPicture step_picture(const TourStep& step,
                         const Setup& setup,
                         const Report& report,
                         const PictureEffort& effort) {
    const Setup& told = told_setup(step, setup);
    std::optional<Report> other;
    if (step.instead) {
        auto made = make_report(told, told.chosen);
        if (!made) return {};
        other = *std::move(made);
    }
    const Report& known = other ? *other : report;
    StepPicture picture{frame_of(step, told, known, effort)};
    // What is lost on the way is not what such a step tells of.
    if (picture.frame && step.instead) {
        std::erase_if(picture.frame->labels,
                      [](const Label& label) { return label.role == LabelRole::clipped; });
    }
    if (picture.frame && step.instead && step.instead->ghost)
        add_ghost_light(*picture.frame, *step.instead->ghost, step.instead->ghost_words, effort);
    if (step.show.contains(TourShow::sight)) picture.sight = sight_of(told, known);
    return picture;
}

std::vector<StepPicture> step_pictures(const Tour& tour,
                                       const Setup& setup,
                                       const Report& report,
                                       const PictureEffort& effort) {
    std::vector<StepPicture> pictures;
    for (const TourStep& step : tour.steps)
        pictures.push_back(step_picture(step, setup, report, effort));
    return pictures;
}

}  // namespace beamfork
