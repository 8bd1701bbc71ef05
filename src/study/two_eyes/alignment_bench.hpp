// A train as chief rays see it: only what turns light, both eyes, with one part at a time put slightly
// otherwise. Made for asking what small errors do without building the train anew.
#pragma once

#include <span>

#include "study/two_eyes/alignment.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// Where the chief rays close to the axis arrive on a field stop: the middle one, mm from its middle, and
/// the map from field slopes.
struct ArmImage {
    glm::dvec2 middle{0};
    glm::dmat2 stop_from_slope{1.0};
};

/// Both images upright or both mirrored.
bool same_hand(const ArmImage& left, const ArmImage& right);

/// Keeps a reference to the train.
class AlignmentBench {
public:
    AlignmentBench(const Setup& setup, const Train& train);

    [[nodiscard]] const std::array<ArmImage, 2>& images() const { return images_; }
    [[nodiscard]] Misalignment seen() const;
    /// With that part, the head or the eyepieces, in place of the setup's own; only these eyes are traced
    /// anew.
    [[nodiscard]] Misalignment
    seen_with(std::size_t part, const PartBody& body, std::span<const Eye> eyes) const;

private:
    void put(EyePath& path, std::size_t part, const PartLayout& layout, Eye eye) const;

    const Train& train_;
    std::array<EyePath, 2> bare_;
    std::array<ArmImage, 2> images_;
    std::array<LayoutContext, 2> contexts_;
    Millimetres focal_length_{1};  ///< of the eyepieces
};

}  // namespace beamfork
