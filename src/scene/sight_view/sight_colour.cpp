#include "scene/sight_view/sight_colour.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include "study/image/white_light.hpp"

namespace beamfork {

namespace {

constexpr std::array<double WhiteLine::*, 3> matching{&WhiteLine::x, &WhiteLine::y, &WhiteLine::z};

}  // namespace

std::vector<std::size_t> lines_of(std::size_t channel) {
    constexpr int rays = 240;
    double sum = 0;
    for (const WhiteLine& line : white_lines)
        sum += line.*matching[channel];
    std::vector<std::size_t> lines;
    for (int i = 0; i < rays; ++i) {
        double left = sum * std::fmod((i + 0.5) * std::numbers::sqrt2, 1.0);
        std::size_t line = 0;
        while (line + 1 < white_lines.size() && left > white_lines[line].*matching[channel])
            left -= white_lines[line++].*matching[channel];
        lines.push_back(line);
    }
    return lines;
}

Micrometres mean_wavelength(std::size_t channel) {
    double sum = 0;
    Micrometres mean{0};
    for (const WhiteLine& line : white_lines) {
        sum += line.*matching[channel];
        mean = mean + line.wavelength * (line.*matching[channel]);
    }
    return mean / sum;
}

}  // namespace beamfork
