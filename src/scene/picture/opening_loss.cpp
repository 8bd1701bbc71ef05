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
        if (here > loss.share) loss = {here, leaks};
    }
    return loss;
}

}  // namespace beamfork
