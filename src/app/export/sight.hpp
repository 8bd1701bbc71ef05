// Pictures of what each eye sees, with their names below them: to be taken along.
#pragma once

#include "render/image.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

/// The pictures of that request in a row, each with its name in a strip below it.
Image captioned_sight(const Sights& sights, const SightRequest& request);

/// The Moon as both eyes see it, as close as suits it, with its names; at night in red alone. As PNG.
std::vector<std::uint8_t> moon_for_paper(const Setup& setup, const Report& report, bool is_night);

}  // namespace beamfork
