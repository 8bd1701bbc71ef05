// Things to look at: the Moon, a star field, a planet, the edge of the Moon, a double star, a board with a scale by day.
// All of our own making, from a seed; the same seed gives the same sky. Directions as in study/sight_view/sight_view.hpp.
#pragma once

#include <array>
#include <numbers>
#include <optional>
#include <string_view>
#include <vector>

#include <glm/glm.hpp>

namespace beamfork {

enum class SightSubject { moon, stars, planet, lunar_edge, double_star, daytime };
inline constexpr std::array all_sight_subjects{SightSubject::moon,        SightSubject::stars,
                                               SightSubject::planet,      SightSubject::lunar_edge,
                                               SightSubject::double_star, SightSubject::daytime};
/// "moon", "stars", "planet", "moon-edge", "double", "board": as on the command line.
std::string_view name_of(SightSubject subject);
std::optional<SightSubject> sight_subject_named(std::string_view name);

/// Of the Moon, a tangent: the mean of its semidiameter, rounded.
inline constexpr double moon_radius = 15.5 * 60 * std::numbers::pi / (180 * 3600);

inline constexpr double arcsecond = std::numbers::pi / (180 * 3600);  ///< radians

struct SightScene {
    SightSubject subject = SightSubject::moon;
    double planet_arcsec = 44;        ///< diameter of the disc
    double separation_arcsec = 4;     ///< of the double star, along x
    double magnitude_difference = 1;  ///< how much fainter its companion is
    unsigned seed = 1;
    bool operator==(const SightScene&) const = default;
};

struct SkyStar {
    glm::dvec2 at{0};
    double magnitude = 0;
    glm::vec3 colour{1};  ///< red, green, blue shares of its light, mean 1
};

/// Stars within `radius` (a tangent) down to that magnitude, at most 4000. A star field has as many stars as
/// the sky at large: 4800 to magnitude 6 and 2.5 million to 11.5 over the whole sphere (round numbers,
/// from memory), on a straight line of log number between and beyond.
std::vector<SkyStar> stars_of(const SightScene& scene, double radius, double faintest);

/// Mean number of stars brighter than that magnitude in a square degree.
double stars_per_square_degree(double magnitude);

/// Light of an extended subject in that direction, red, green and blue, 0..1; black for stars. The board's
/// scale has a line every `tick` (a tangent), a number at every fifth in units of the tick.
glm::vec3 sky_light(const SightScene& scene, glm::dvec2 sky, double tick);

/// 1, 2 or 5 times a power of ten arcseconds, as a tangent, so that a field of that radius has about twenty.
double board_tick(double field_radius);

}  // namespace beamfork
