// Optical glass: the index of refraction relative to air at a wavelength, from published dispersion
// constants, and the catalogue that names them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "base/units.hpp"

namespace beamfork {

/// Spectral lines by which glasses are specified (R. Paschotta, Encyclopedia of Laser Physics and
/// Technology, "Standard spectral lines", Table 1; d and e are the reference lines of ISO 7944).
namespace spectral_line {
constexpr Micrometres F = nanometres(486.1327);
constexpr Micrometres e = nanometres(546.0740);
constexpr Micrometres d = nanometres(587.5618);
constexpr Micrometres C = nanometres(656.2725);
}  // namespace spectral_line

/// One glass type. Sellmeier: n^2 - 1 = sum B_i L / (L - C_i), L the squared wavelength in um^2.
struct Glass {
    std::string name;
    std::string source;  ///< author, work, date of the constants
    std::vector<double> b;
    std::vector<double> c;  ///< um^2
    Micrometres shortest{0.35};
    Micrometres longest{2.3};
    bool operator==(const Glass&) const = default;
};

/// Index relative to air at 20-22 C; an error names the range when the wavelength lies outside.
Result<double> refractive_index(const Glass& glass, Micrometres wavelength);

/// Abbe number (n_d - 1) / (n_F - n_C).
Result<double> abbe_number(const Glass& glass);

/// All glasses of one catalogue file, in file order.
struct Catalogue {
    std::vector<Glass> glasses;

    [[nodiscard]] std::vector<std::string> names() const;
    /// The glass with that very name, or an error with the nearest known name.
    [[nodiscard]] Result<Glass> find(std::string_view name) const;
    /// The same without a copy; null when unknown.
    [[nodiscard]] const Glass* known(std::string_view name) const;
};

/// Reads a catalogue in TOML (`[[glass]]` with name, source, b, c, range_um).
Result<Catalogue> read_catalogue(std::string_view toml, const std::string& file_name);

/// The catalogue shipped in assets/glasses.toml, read once.
const Catalogue& standard_catalogue();

}  // namespace beamfork
