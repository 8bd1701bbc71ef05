// Where a part's lens can stand: in the air between the last glass, mirror or lens before it and the next one behind it.
// Stated beyond either, it is laid out at that face, for no light can be traced through a lens inside glass.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "parts/layout.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// A face that ends the room of a lens.
struct LensNeighbour {
    std::size_t part = 0;  ///< index into Setup::parts
    std::string face;      ///< "cube entry face"
    double place = 0;      ///< on the axis, mm behind the entry face of the lens's part
};

struct LensRoom {
    std::size_t part = 0;  ///< whose lens it is
    double stated = 0;     ///< where it is said to stand, mm behind its part's entry face
    LensNeighbour before;
    LensNeighbour behind;
    double spare = 0;  ///< mm that the face behind may stand farther off: its place is not stated

    [[nodiscard]] double placed() const;  ///< where it is laid out
    /// The ends of its room in whole hundredths of a millimetre.
    [[nodiscard]] double lowest() const;
    [[nodiscard]] double highest() const;
    /// How far it would have to stand beyond that face, mm; 0 where it has room.
    [[nodiscard]] double inside() const;
};

/// The lens of that layout, if it has one.
const Surface* lens_of(const PartLayout& layout);

/// The first face, mirror or lens on the axis behind part `lens` of those in the light, whose layouts these are; it must
/// have a lens alone, as shifters and correctors do. Nothing when none comes.
std::optional<LensNeighbour> next_face(const Setup& setup,
                                       const std::vector<std::size_t>& in_light,
                                       const std::vector<PartLayout>& layouts,
                                       std::size_t lens);

}  // namespace beamfork
