// All words of the picture in their places: the dimension of what falls short first, the eyes' names at the eyes, the
// parts' names in columns beside the train. Pixels as in scene/picture/camera.hpp: y down. It depends on what is
// seen and from where alone: not on what is selected or pointed at.
#pragma once

#include <optional>

#include "scene/picture/label_layout.hpp"
#include "scene/picture/name_columns.hpp"

namespace beamfork {

/// From a place in the picture to a box of words.
struct Leader {
    std::size_t label = 0;  ///< whose place it is
    glm::vec2 from{0};
    glm::vec2 to{0};
};

/// Words in one box, one below the other: the name of a part and what is told of it, or the names of both eyes.
struct PlacedWords {
    std::vector<std::size_t> rows;  ///< indices into the labels given, from the top
    PixelBox box;
    std::vector<Leader> leaders;
};

struct PictureWords {
    std::vector<PlacedLabel> alone;  ///< labels that belong to no name
    std::vector<PlacedWords> names;  ///< of the parts, in the order of the light; then of the eyes
};

PictureWords lay_out_words(std::span<const Label> labels,
                           const Camera& camera,
                           Viewport viewport,
                           const LabelMeasure& measure,
                           const LightCover& cover = {},
                           float foot_px = 0);

/// What all of them take.
std::vector<PixelBox> boxes_of(const PictureWords& words);

/// The part's box with all its rows, also those that come by pointing: where it stands already, only longer; one that
/// had no room stands beside its part, over what is there. Empty when the part has no name in the picture.
std::optional<PlacedWords> whole_words_of(int part,
                                          const PictureWords& words,
                                          std::span<const Label> labels,
                                          const Camera& camera,
                                          Viewport viewport,
                                          const LabelMeasure& measure);

}  // namespace beamfork
