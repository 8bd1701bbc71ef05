// Two-eye alignment: how far the two eyes' images stand apart, from traced chief rays, against published
// limits, and how much of each error of a prism or an eyepiece's seat alone would reach the limit.
//
// Angles are apparent: as seen behind the eyepieces, the arc tangent of a displacement on the field stop
// over the eyepiece's focal length. `inward` > 0: the left image stands to the right of the right one, so
// the eyes must turn inward, as for something near; < 0: outward, which eyes bear far less.
#pragma once

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "train/train.hpp"

namespace beamfork {

struct Misalignment {
    Arcminutes inward;
    Arcminutes left_up;  ///< > 0: the left image stands higher
    Degrees rotation;    ///< > 0: the left image is turned counter-clockwise against the right
    double size = 0;     ///< percent; > 0: the left image is larger
};

/// `fair` is what a high-performance instrument may have, `usual` what one for general purposes may.
template <class Amount>
struct AlignmentLimit {
    Amount fair{};
    Amount usual{};
};
/// At the eye. ISO 14133-2:2003 (high performance) and ISO 14133-1:2003 (general purpose), both
/// up to 20x, as tabled by A. Koehler, "Binokulare Justierung" (a web article; the standards themselves
/// were not seen).
inline constexpr AlignmentLimit<Arcminutes> inward_limit{{60}, {100}};
inline constexpr AlignmentLimit<Arcminutes> outward_limit{{20}, {40}};
inline constexpr AlignmentLimit<Arcminutes> height_limit{{20}, {30}};
/// 1 degree and 2 percent: common practice, from memory, no source. Twice that as the end: a choice.
inline constexpr AlignmentLimit<Degrees> rotation_limit{{1}, {2}};
inline constexpr AlignmentLimit<double> size_limit{2, 4};

/// Good up to a third of the fair limit, comfortable up to it, hard up to the usual one. A choice, in line with
/// common practice: long looks at high power want more care than a hand-held glass.
enum class Merging { good, comfortable, hard, impossible };
template <class Amount>
Merging merging(Amount value, const AlignmentLimit<Amount>& limit) {
    using std::abs;
    const Amount size = abs(value);
    if (size <= limit.fair / 3) return Merging::good;
    if (size <= limit.fair) return Merging::comfortable;
    return size <= limit.usual ? Merging::hard : Merging::impossible;
}

/// One possible error by itself: what one unit of it (arcminute or mm) does, and how much reaches the fair
/// limit of height, turning outward or rotation, whichever comes first.
struct ErrorAllowance {
    std::size_t part = 0;
    std::string place;  ///< "arm prism", "left eyepiece"
    std::string error;  ///< "tilt in its bend"
    FieldUnit unit = FieldUnit::arcminute;
    std::string key;  ///< of the part's field
    Misalignment per_unit;
    double stated = 0;       ///< as the setup has it, in `unit`
    double allowed = 0;      ///< in `unit`; infinite when it does nothing
    std::string limited_by;  ///< "height", "sideways", "rotation"
};

struct Alignment {
    Misalignment seen;
    bool same_handed = true;    ///< both images upright or both mirrored alike
    Dioptres focus_difference;  ///< by which the eyes must differ beyond their seats' setting
    std::vector<ErrorAllowance>
        tolerances;  ///< the most delicate first: least movement of a prism's edge

    [[nodiscard]] Merging sideways() const;
    [[nodiscard]] Merging height() const;
    [[nodiscard]] Merging rotation() const;
    [[nodiscard]] Merging size() const;
    [[nodiscard]] Merging worst() const;
    /// The stated error that does most of what is seen; null when none is stated.
    [[nodiscard]] const ErrorAllowance* main_cause() const;
};

/// `gap_difference`: image before where the eye wants it, left less right.
Alignment alignment(const Setup& setup, const Train& train, Millimetres gap_difference);

}  // namespace beamfork
