#include "scene/tour/ghost_light.hpp"

#include <algorithm>
#include <iterator>

#include "scene/picture/fingerprint.hpp"
#include "scene/picture/picture_input.hpp"

namespace beamfork {

namespace {

constexpr float ghost_strength = 5;  // few rays among many: each is seen by itself

bool is_within(const Bounds& bounds, glm::vec3 at) {
    return glm::all(glm::greaterThanEqual(at, bounds.low))
           && glm::all(glm::lessThanEqual(at, bounds.high));
}

}  // namespace

void add_ghost_light(Frame& frame,
                     const Setup& was,
                     const std::string& words,
                     const PictureEffort& effort) {
    const auto report = make_trial(was, {64, LightForm::few_rays});
    if (!report) return;
    Frame ghost;
    add_star_light(ghost, {was, *report, effort},
                   {{0, 0}, ColourRole::ghost, effort.rim_rays, ghost_strength});
    const auto tells = [&](const LightRibbon& ribbon) {
        return !ribbon.clipped && is_within(frame.rear_bounds, 0.5F * (ribbon.from + ribbon.to));
    };
    std::copy_if(ghost.light.begin(), ghost.light.end(), std::back_inserter(frame.light), tells);
    for (const Eye eye : both_eyes) {
        const Point image =
            point_near_stop(report->train.path(eye), report->image_behind_stop[side_of(eye)]);
        frame.marks.push_back(
            {glm::vec3(image), ColourRole::ghost, 13, MarkShape::ring, true, false});
        if (eye == Eye::left)
            frame.labels.insert(frame.labels.begin(),
                                {glm::vec3(image), words, LabelRole::note, -1, -1});
    }
    frame.revision = fingerprint(frame);
}

}  // namespace beamfork
