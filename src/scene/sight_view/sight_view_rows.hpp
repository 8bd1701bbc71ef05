// What each eye sees, in words and numbers beside the pictures.
#pragma once

#include <string>
#include <vector>

#include "scene/kit/value_row.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

/// How the image stands: "upright", "turned by 180°", "mirrored left-right" ..., as study/two_eyes/orientation says it
std::string orientation_words(const EyeSight& sight);

/// How far the two images of the middle of the sky's field lie apart at the eyes, arcminutes.
double misalignment_arcmin(const EyeSight& left, const EyeSight& right);

std::vector<ValueRow> sight_view_rows(const Sights& sights, const SightRequest& request);

/// "Left eye", "Both eyes" ...: what each picture of a layout shows, from the left.
std::vector<std::string> picture_names(SightLayout layout);

struct Report;

/// Whether the eyes see sharply, and what this pair gives: power, field and exit pupil.
struct SightSummary {
    bool is_sharp = false;
    std::string focus;  ///< "out of focus by 30.0 mm"
    std::string gives;
};
SightSummary sight_summary(const Report& report);

/// The same request, as close as fits its subject.
SightRequest fitted(SightRequest request, const Sights& sights);

}  // namespace beamfork
