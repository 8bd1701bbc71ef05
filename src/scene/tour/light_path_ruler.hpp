// The telescope's light path as a ruler laid along the train: each part takes its share, and what is left of it runs
// straight on behind the last part to the image.
#pragma once

#include <vector>

#include "scene/picture/picture.hpp"

namespace beamfork {

/// One part on the way to the left eye's field stop, reduced mm.
struct RulerShare {
    std::size_t part = 0;
    Millimetres takes;  ///< of the light path behind the focuser
    Millimetres
        left;  ///< from its exit to the image, were it the last part; negative: the image lies before that
};

/// In the order of the light, from the drawtube racked in. Lenses on the way have done their work.
std::vector<RulerShare> ruler_shares(const Train& train);

/// The train with the ruler instead of its light: the shares of the parts up to the last one that is `on` (by part), and
/// what is left. The drawtube must stand racked in.
Frame ruler_picture(const Setup& setup,
                    const Report& report,
                    const std::vector<bool>& on,
                    const PictureEffort& effort);

}  // namespace beamfork
