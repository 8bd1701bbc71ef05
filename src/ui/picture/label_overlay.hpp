// The names that float over the picture, on any draw list: in the window and in pictures without one.
#pragma once

#include <memory>
#include <optional>

#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/light_cover.hpp"
#include "scene/picture/picture_words.hpp"
#include "scene/picture/train_inset.hpp"
#include "scene/picture/view_options.hpp"
#include "ui/picture/word_glide.hpp"

#include <imgui.h>

namespace beamfork {

/// The words of one picture, laid out.
struct LaidWords {
    std::vector<Label> labels;  ///< those that are shown; the places name them by index
    PictureWords placed;
    std::optional<TrainInset> inset;  ///< names keep off it
};

/// The words that were laid out last, and all that they were laid out by: while that stays, they are not laid out again.
struct LaidBefore {
    std::vector<Label> labels;
    Camera camera;
    Viewport viewport{0, 0};
    float foot_px = 0;
    float letters_px = 0;
    LightCover cover;
    PictureWords placed;
};

/// Made when it is asked for the first time.
LaidBefore* kept_in(std::shared_ptr<LaidBefore>& laid);

/// What is seen and from where; which part is under the pointer, which one is selected.
struct LabelLook {
    const Frame& frame;
    const Camera& camera;
    const ViewOptions& options;
    int hot_part = -1;
    std::optional<std::size_t> selected_part;
    float foot_px = 0;  ///< of the picture, where controls stand: no name goes there
    const LightCover* cover = nullptr;  ///< null: of the frame alone
    Emphasis emphasis{};                ///< names of what has faded, or is held back, go
    WordGlide* glide = nullptr;         ///< null: words stand in their places at once
    LaidBefore* before = nullptr;       ///< null: laid out anew
};

/// Nothing when labels are switched off. `viewport`: the picture's size.
LaidWords lay_out_labels(Viewport viewport, const LabelLook& look);

/// `origin` is the picture's upper left corner on the list.
void draw_labels(ImDrawList& list,
                 ImVec2 origin,
                 Viewport viewport,
                 const LabelLook& look,
                 const LaidWords& words);

/// Both at once.
void draw_labels(ImDrawList& list, ImVec2 origin, Viewport viewport, const LabelLook& look);

}  // namespace beamfork
