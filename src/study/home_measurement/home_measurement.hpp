// Measuring your own parts at home: what is read off a ruler, a drawtube or a clock, and the number with its
// plus-minus that follows.
//
// Every "±" is one standard uncertainty: about two readings in three lie within it. It is carried through
// each formula by the root of the sum of squares of what each reading contributes (JCGM 100:2008, "GUM",
// Eq. 10); readings that are taken several times count with their mean and its standard error (GUM 4.2.3),
// joined with what the ruler or the clock itself can be off by.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "base/units.hpp"
#include "parts/field.hpp"

namespace beamfork {

/// A number with one standard uncertainty, in the same unit.
struct Measured {
    double value = 0;
    double plus_minus = 0;
    bool operator==(const Measured&) const = default;
};

/// What was read: once or several times, and what the tool itself can be off by.
struct Reading {
    std::vector<double> values;
    double tool_plus_minus = 0;
    bool operator==(const Reading&) const = default;
};

/// The mean; its ± joins the standard error of the mean and the tool's. `values` must not be empty.
Measured mean_of(const Reading& reading);

/// "812.3", "812.3 ± 0.5", "112.4 112.1 112,9 +- 0.3": numbers between blanks or semicolons, then the
/// tool's own ±, which is `usual` where it is not said. An error says what cannot be read.
Result<Reading> parse_reading(std::string_view text, double usual_plus_minus);

/// One number that a measurement asks for.
struct ReadingInfo {
    std::string key;    ///< as on the command line, with its unit: "seconds"
    std::string label;  ///< as on screen
    std::string unit;   ///< "mm", "s", "°", "m" or ""
    std::string help;
    double low = 0;                     ///< smallest that makes sense
    double high = 0;                    ///< largest
    double usual_plus_minus = 0;        ///< of the tool, where none is given
    std::optional<double> otherwise{};  ///< taken when nothing is entered; none: it must be entered
};

struct HomeMeasurement {
    std::string key;    ///< "field_stop_by_drift"
    std::string title;  ///< "Field stop by drift timing"
    std::string gives;  ///< what the result is: "Field stop"
    std::string unit;   ///< of the result: "mm" or "×"
    std::vector<ReadingInfo> readings{};
    std::vector<std::string> steps{};     ///< in plain words, in order
    std::vector<std::string> cautions{};  ///< may be empty
    std::string formula{};                ///< in words, with its source
    /// Keys of fields that the result can fill, of every part that has one.
    std::vector<std::string> fields{};
    /// One value per reading, in order, each within its range; not finite where they contradict each other.
    std::function<double(std::span<const double>)> value{};
};

std::span<const HomeMeasurement> home_measurements();
/// The one with that key, or an error with the nearest.
Result<HomeMeasurement> find_home_measurement(std::string_view key);

/// One reading's share of the result.
struct ReadingShare {
    std::size_t reading = 0;  ///< index into HomeMeasurement::readings
    double plus_minus = 0;    ///< of the result from this reading alone
};
struct MeasurementResult {
    Measured result;
    std::vector<ReadingShare> contributions;  ///< in the order of the readings
};

/// One reading per ReadingInfo, in order; empty ones take what ReadingInfo::otherwise says. Errors name
/// the reading that is missing, out of range, or contradicts the others.
Result<MeasurementResult> evaluate(const HomeMeasurement& measurement,
                                   std::span<const Reading> readings);

/// The sky turns once against the stars in 86164.0905 s (mean sidereal day; P. K. Seidelmann (ed.),
/// Explanatory Supplement to the Astronomical Almanac, 1992, from memory), 15.0411 arcseconds a second.
constexpr double sidereal_day_seconds = 86164.0905;

/// Angle between two directions that one star takes up `seconds` apart, along the great circle:
/// sin(angle / 2) = cos(declination) sin(half of the turn) (spherical trigonometry).
Radians drift_angle(double seconds, Degrees declination);
/// 2 F tan(angle / 2) for a star that crosses the middle of the field.
Millimetres field_stop_by_drift(Millimetres focal_length, double seconds, Degrees declination);
/// Image of a target at that distance, brought back to where the sky's image lies (Newton's conjugates).
Millimetres back_focus_by_paper(Millimetres drawtube_out,
                                Millimetres paper_behind,
                                Millimetres focal_length,
                                Metres target_distance);
/// Similar triangles: a lamp that is a mm in front of an opening throws a circle of light, b mm behind it.
Millimetres opening_by_lamp(Millimetres circle, Millimetres lamp_before, Millimetres screen_behind);

}  // namespace beamfork
