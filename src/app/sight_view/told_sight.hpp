// What each eye sees at the step of a tour that is told, on the graphics card for a talk's picture to show.
#pragma once

#include <memory>

#include "render/uploaded_picture.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

#include <imgui.h>

namespace beamfork {

class ToldSight {
public:
    /// Null: nothing is shown. True when that is another picture than before. Needs a current context.
    bool show(const std::shared_ptr<const SightImage>& sight);
    /// Null: none is shown.
    [[nodiscard]] ImTextureID texture() const;

private:
    std::shared_ptr<const SightImage> shown_;
    UploadedPicture picture_;
};

}  // namespace beamfork
