// How well a value of a part is known: plus or minus how much, and from where.
#pragma once

#include <optional>
#include <string>

#include "base/contract.hpp"

namespace beamfork {

enum class KnownBy { datasheet, measured, guessed };

/// In the unit of the field it belongs to. A datasheet's or a guessed value is anywhere within +- with equal
/// chance; for a measured one, +- is one standard deviation of a normal distribution.
struct Tolerance {
    std::optional<double> plus_minus;  ///< nothing: as much as is usual for a length known that way
    KnownBy known_by = KnownBy::datasheet;
    bool operator==(const Tolerance&) const = default;

    /// The standard deviation: a / sqrt(3) for a rectangle of half width a (JCGM 100:2008, GUM, 4.3.7). There
    /// must be a number.
    [[nodiscard]] double standard() const {
        BEAMFORK_EXPECTS(plus_minus.has_value());
        constexpr double rectangle = 0.5773502691896258;
        return known_by == KnownBy::measured ? *plus_minus : *plus_minus * rectangle;
    }
};

/// What is assumed of a length when nobody says plus or minus how much, mm. Common practice, no source: leaflets
/// round to whole millimetres and specimens differ by about as much; a ruler is read to half a millimetre;
/// a guess by eye is off by some millimetres.
inline double usual_plus_minus_mm(KnownBy known_by) {
    switch (known_by) {
    case KnownBy::datasheet: return 1;
    case KnownBy::measured: return 0.5;
    case KnownBy::guessed: return 5;
    }
    return 0;
}

inline std::string to_word(KnownBy known_by) {
    switch (known_by) {
    case KnownBy::datasheet: return "datasheet";
    case KnownBy::measured: return "measured";
    case KnownBy::guessed: return "guessed";
    }
    return "";
}

}  // namespace beamfork
