// How finely the picture is drawn while something moves: as finely as lets it follow the hand, on whatever draws it.
// A graphics card never notices; a machine that draws with its processor shows fewer pixels and rays until the hand rests.
#pragma once

#include <array>
#include <cstddef>

namespace beamfork {

class DragDetail {
public:
    /// Of the window's pixels, along each side: 1, or less where that took too long.
    [[nodiscard]] float share() const { return steps.at(step_).pixels; }
    /// Of the rays.
    [[nodiscard]] float rays() const { return steps.at(step_).rays; }

    /// How long the picture of a moving frame took, in seconds, drawn at share() and rays(). Two slow ones in a row make the next
    /// coarser; ten in a row that leave room make it finer.
    void took(double seconds) {
        slow_ = seconds > most_s ? slow_ + 1 : 0;
        const bool has_room = step_ > 0 && seconds * growth() < most_s;
        roomy_ = has_room ? roomy_ + 1 : 0;
        if (slow_ >= 2 && step_ + 1 < steps.size()) move_to(step_ + 1);
        if (roomy_ >= 10) move_to(step_ - 1);
    }

    /// Of a whole frame of 33 ms; the rest is for the studies and the panels.
    static constexpr double most_s = 0.022;

private:
    struct Step {
        float pixels;
        float rays;
    };

    // How many times the work of this one the next finer one is, at most: its pixels, and what its rays add.
    [[nodiscard]] double growth() const {
        const double ratio = steps.at(step_ - 1).pixels / steps.at(step_).pixels;
        return 1.2 * ratio * ratio;
    }
    void move_to(std::size_t step) {
        step_ = step;
        slow_ = 0;
        roomy_ = 0;
    }

    static constexpr std::array<Step, 4> steps{
        {{1, 1}, {0.75F, 0.5F}, {0.5F, 0.25F}, {0.375F, 0.25F}}};
    std::size_t step_ = 0;
    int slow_ = 0;
    int roomy_ = 0;
};

}  // namespace beamfork
