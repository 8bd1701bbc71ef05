// Draws the 3D view with its names into pictures without a display: one picture or many.
#pragma once

#include <string>

#include "app/sight_view/told_sight.hpp"
#include "app/stage/gui.hpp"
#include "app/stage/stage.hpp"
#include "render/canvas.hpp"
#include "render/offscreen.hpp"
#include "scene/film/film.hpp"
#include "scene/tour/tour_frame.hpp"

namespace beamfork {

/// Of one size, for one after another.
struct PaintedSize {
    int width = 1920;
    int height = 1080;
    float text_scale = 1;  ///< of letters that suit a picture of this height
};

class ScenePainter {
public:
    /// Errors: no_graphics.
    static Result<ScenePainter> create(const PaintedSize& size);

    /// A moment with `told` is a talk's screen: the title above, the caption in large letters below. `transparent`:
    /// without a ground, colours plain beside their alpha.
    Result<Image> paint(const Frame& frame, const FilmMoment& moment, bool transparent = false);

private:
    Result<Image> paint_talk(const Frame& frame, const FilmMoment& moment);
    [[nodiscard]] Result<Image> finish(const ViewOptions& options);

    ScenePainter(
        OffscreenContext context, Stage stage, Gui gui, Canvas canvas, const PaintedSize& size)
        : context_(std::move(context)),
          stage_(std::move(stage)),
          gui_(std::move(gui)),
          canvas_(std::move(canvas)),
          size_(size) {}

    OffscreenContext context_;  // first: it dies behind everything that draws in it
    Stage stage_;
    Gui gui_;
    Canvas canvas_;
    ToldSight sight_;
    PaintedSize size_;
};

}  // namespace beamfork
