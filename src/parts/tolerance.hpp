// How well a value of a part is known: plus or minus how much, and from where.
#pragma once

#include <string>

namespace beamfork {

enum class KnownBy { datasheet, measured, guessed };

/// In the unit of the field it belongs to. A datasheet's or a guessed value is anywhere within +- with equal
/// chance; for a measured one, +- is one standard deviation of a normal distribution.
struct Tolerance {
    double plus_minus = 0;
    KnownBy known_by = KnownBy::datasheet;
    bool operator==(const Tolerance&) const = default;

    /// The standard deviation: a / sqrt(3) for a rectangle of half width a (JCGM 100:2008, GUM, 4.3.7).
    [[nodiscard]] double standard() const {
        constexpr double rectangle = 0.5773502691896258;
        return known_by == KnownBy::measured ? plus_minus : plus_minus * rectangle;
    }
};

inline std::string to_word(KnownBy known_by) {
    switch (known_by) {
    case KnownBy::datasheet: return "datasheet";
    case KnownBy::measured: return "measured";
    case KnownBy::guessed: return "guessed";
    }
    return "";
}

}  // namespace beamfork
