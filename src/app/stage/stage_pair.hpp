// The window's picture, and a second one at its right while two setups share it halved.
#pragma once

#include <optional>

#include "app/stage/stage.hpp"

namespace beamfork {

class StagePair {
public:
    /// Needs a current context, as Renderer does.
    static Result<StagePair> create();

    /// Each as Stage::show, seen from the same place; `other` null: one picture. True when either was drawn.
    Result<bool> show(const Frame& frame, const Frame* other, const Stage::Look& look);
    [[nodiscard]] PictureTexture texture() const { return stage_.texture(); }
    /// 0: there is none.
    [[nodiscard]] PictureTexture other_texture() const { return other_ ? other_->texture() : 0; }

private:
    explicit StagePair(Stage stage) : stage_(std::move(stage)) {}

    Stage stage_;
    std::optional<Stage> other_;
};

}  // namespace beamfork
