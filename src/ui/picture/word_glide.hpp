// Words in the picture glide to a new place when the train or the camera moves, and stand still when nothing does.
#pragma once

#include <map>
#include <string>

#include "scene/picture/camera.hpp"

namespace beamfork {

class WordGlide {
public:
    /// Before the words of one frame are drawn. In a picture of another size they stand in their places at once.
    void begin(Viewport viewport, float seconds);
    /// Where the words that belong at `wanted` stand now: the upper left corner of their box, pixels.
    glm::vec2 place(const std::string& words, glm::vec2 wanted);
    /// Forgets words that were not drawn.
    void end();
    /// Some are still under way.
    [[nodiscard]] bool moves() const { return moves_; }
    /// Where they stand, by the words.
    [[nodiscard]] std::map<std::string, glm::vec2> places() const;

private:
    struct Place {
        glm::vec2 at{0};
        bool is_drawn = true;
    };
    std::map<std::string, Place> places_;
    Viewport viewport_{0, 0};
    float share_ = 1;  // of the way, in this frame
    bool moves_ = false;
};

}  // namespace beamfork
