// The 3D picture inside the window: drawn again only when something about it has changed, quickly while
// something moves and carefully once it rests.
#pragma once

#include "app/stage/drag_detail.hpp"
#include "render/renderer.hpp"
#include "ui/picture/picture_ui.hpp"

namespace beamfork {

class Stage {
public:
    /// Needs a current context, as Renderer does.
    static Result<Stage> create();

    struct Look {
        Camera camera;
        ViewOptions options;
        SceneArea area;
        int highlighted_part = -1;
        float pixel_scale = 1;
        bool quick = false;        ///< something moves
        bool transparent = false;  ///< no ground
        Emphasis emphasis{};
        bool operator==(const Look&) const = default;
    };

    /// Draws if the frame or the look differ from what was drawn last; true when it drew.
    Result<bool> show(const Frame& frame, const Look& look);
    /// The next show() draws carefully although nothing else has changed.
    [[nodiscard]] bool is_quick() const { return last_ && last_->quick; }
    [[nodiscard]] PictureTexture texture() const { return texture_; }
    [[nodiscard]] const Renderer& renderer() const { return renderer_; }

private:
    explicit Stage(Renderer renderer) : renderer_(std::move(renderer)) {}

    Renderer renderer_;
    PictureTexture texture_ = 0;
    DragDetail detail_;
    std::optional<Look> last_;
    std::uint64_t revision_ = 0;
};

}  // namespace beamfork
