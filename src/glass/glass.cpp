#include "glass/glass.hpp"

#include <cmath>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

Result<double> refractive_index(const Glass& glass, Micrometres wavelength) {
    if (!(wavelength >= glass.shortest && wavelength <= glass.longest)) {
        return fail(ErrorCode::bad_input,
                    fmt::format("{} is known from {} to {} um, not at {} um", glass.name,
                                format_exact(glass.shortest.value),
                                format_exact(glass.longest.value), format_exact(wavelength.value)));
    }
    const double squared = wavelength.value * wavelength.value;
    double n_squared = 1;
    for (std::size_t i = 0; i < glass.b.size(); ++i) {
        n_squared += glass.b[i] * squared / (squared - glass.c[i]);
    }
    return std::sqrt(n_squared);
}

Result<double> abbe_number(const Glass& glass) {
    const auto n_d = refractive_index(glass, spectral_line::d);
    const auto n_F = refractive_index(glass, spectral_line::F);
    const auto n_C = refractive_index(glass, spectral_line::C);
    if (!n_d) return n_d;
    if (!n_F) return n_F;
    if (!n_C) return n_C;
    return (*n_d - 1) / (*n_F - *n_C);
}

std::vector<std::string> Catalogue::names() const {
    std::vector<std::string> result;
    for (const Glass& glass : glasses)
        result.push_back(glass.name);
    return result;
}

const Glass* Catalogue::known(std::string_view name) const {
    for (const Glass& glass : glasses) {
        if (glass.name == name) return &glass;
    }
    return nullptr;
}

Result<Glass> Catalogue::find(std::string_view name) const {
    if (const Glass* glass = known(name)) return *glass;
    return fail(ErrorCode::not_found,
                fmt::format("no glass called '{}'{}", name, did_you_mean(name, names())));
}

}  // namespace beamfork
