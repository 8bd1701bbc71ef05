// When the window draws: frames go on while something moves and for a few frames after each event; otherwise the
// window sleeps, and costs nothing.
#pragma once

#include <algorithm>
#include <optional>

namespace beamfork {

/// What to do before the next frame.
struct FramePause {
    bool sleeps = false;              ///< false: take what events there are and draw
    std::optional<double> at_most_s;  ///< of sleep; none: until something happens
};

class FrameClock {
public:
    /// `is_typing`: a text caret blinks. `wake_after`, in seconds: a frame is wanted then though nothing happens.
    /// Whoever sleeps draws after it.
    FramePause before_next_frame(bool is_typing, std::optional<double> wake_after) {
        if (frames_left_ > 0) {
            --frames_left_;
            return {};
        }
        frames_left_ = frames_after_event;
        constexpr double caret_seconds = 0.4;
        if (is_typing) return {true, std::min(caret_seconds, wake_after.value_or(caret_seconds))};
        return {true, wake_after};
    }
    /// What the last frame did is seen in the ones that follow.
    void keep_going() { frames_left_ = std::max(frames_left_, frames_after_event); }

    /// Dear ImGui settles hover and focus within that many.
    static constexpr int frames_after_event = 3;

private:
    int frames_left_ = frames_after_event;
};

}  // namespace beamfork
