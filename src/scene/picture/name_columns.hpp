// Names in two columns beside the train: once round the picture they follow each other as the light does, and no
// leader crosses another. Pixels as in scene/picture/camera.hpp: y down.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "scene/picture/camera.hpp"
#include "scene/picture/light_cover.hpp"

namespace beamfork {

/// A box of words that wants a place.
struct ColumnName {
    glm::vec2 size{0};
    float row_px = 0;  ///< height of one line of words
    /// In the picture, that its leaders come from, at least one: for a column at the left, at the right.
    std::array<std::vector<glm::vec2>, 2> places;
    int priority = 0;  ///< the smaller stays when there is no room
};

struct NameInColumn {
    std::size_t name = 0;  ///< index into those given
    PixelBox box;
    bool is_left = false;
    glm::vec2 leader{
        0};  ///< where its leaders end: on the edge towards the train, beside its first line
};

/// At most so many names stand in one picture; the rest come by pointing.
constexpr std::size_t most_names = 8;

/// `names` in the order of the light. Of the places that keep this order and no leader across another, or
/// through a box, those are taken that have short leaders and hide little of what the cover marks; a name for which
/// there is none is left out, the least important first.
std::vector<NameInColumn>
lay_out_columns(std::span<const ColumnName> names, Viewport viewport, const LightCover& cover);

/// Whether two stretches have a point in common.
bool stretches_meet(glm::vec2 a, glm::vec2 b, glm::vec2 c, glm::vec2 d);

}  // namespace beamfork
