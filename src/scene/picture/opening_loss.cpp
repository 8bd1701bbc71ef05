#include "scene/picture/opening_loss.hpp"

#include "study/light/clipping.hpp"

namespace beamfork {

Loss loss_at(const EyeClipping& clipping, std::size_t surface) {
    Loss loss;
    for (const LitRing& ring : clipping.rings) {
        double here = 0;
        bool leaks = false;
        for (const EndShare& end : ring.ends) {
            if (end.surface != surface) continue;
            here += end.share;
            leaks = leaks || end.is_leak;
        }
        if (&ring == &clipping.rings.front()) loss.in_middle = here;
        if (&ring == &clipping.rings.back()) loss.at_edge = here;
        if (here > loss.share) {
            loss.share = here;
            loss.is_leak = leaks;
        }
    }
    return loss;
}

std::string_view place_in_field(const Loss& loss) {
    constexpr double as_much = 0.75;
    const double most = as_much * loss.share;
    if (loss.at_edge < most) return " at most";
    return loss.in_middle < most ? " at the edge" : " everywhere";
}

}  // namespace beamfork
