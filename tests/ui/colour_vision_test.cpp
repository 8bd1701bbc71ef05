// The palette as colour-blind eyes see it: roles that stand for different things stay apart, or differ in shape.
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "base/srgb.hpp"
#include "scene/findings/finding_rows.hpp"
#include "scene/picture/pupil_paint.hpp"
#include "scene/picture/view_options.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "ui/kit/theme.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

using Rgb3 = std::array<double, 3>;  // linear, 0 .. 1
using Matrix3 = std::array<Rgb3, 3>;

struct Vision {
    const char* name;
    Matrix3 seen_from_shown;
};

// G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision
// Deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, 1291-1298; the authors' table
// of matrices for linear RGB, severity 1.0 (as reprinted in the sources of several colour libraries).
constexpr std::array visions{Vision{"normal", {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}},
                             Vision{"protanopia",
                                    {{{0.152286, 1.052583, -0.204868},
                                      {0.114503, 0.786281, 0.099216},
                                      {-0.003882, -0.048116, 1.051998}}}},
                             Vision{"deuteranopia",
                                    {{{0.367322, 0.860646, -0.227968},
                                      {0.280085, 0.672501, 0.047413},
                                      {-0.011820, 0.042940, 0.968881}}}},
                             Vision{"tritanopia",
                                    {{{1.255528, -0.076749, -0.178779},
                                      {-0.078411, 0.930809, 0.147602},
                                      {0.004733, 0.691367, 0.303900}}}}};

Rgb3 times(const Matrix3& matrix, const Rgb3& v) {
    Rgb3 product{};
    for (std::size_t i = 0; i < 3; ++i)
        product.at(i) = matrix.at(i)[0] * v[0] + matrix.at(i)[1] * v[1] + matrix.at(i)[2] * v[2];
    return product;
}

Rgb3 linear_of(std::uint32_t hex) {
    Rgb3 rgb{};
    for (std::size_t i = 0; i < 3; ++i)
        rgb.at(i) = linear_from_srgb((hex >> (16 - 8 * i) & 255U) / 255.0);
    return rgb;
}

// CIE 1976 L*u*v* (CIE 15:2004, section 8.2.2) of linear sRGB with its own white, D65.
Rgb3 luv_of(const Rgb3& rgb) {
    constexpr Matrix3 xyz_from_rgb{{{0.4124, 0.3576, 0.1805},  // IEC 61966-2-1:1999
                                    {0.2126, 0.7152, 0.0722},
                                    {0.0193, 0.1192, 0.9505}}};
    const Rgb3 white = times(xyz_from_rgb, {1, 1, 1});
    const Rgb3 at = times(xyz_from_rgb, rgb);
    const auto sum = [](const Rgb3& xyz) { return xyz[0] + 15 * xyz[1] + 3 * xyz[2]; };
    if (sum(at) <= 0) return {0, 0, 0};
    constexpr double dark = 216.0 / 24389;
    const double y = at[1] / white[1];
    const double lightness = y > dark ? 116 * std::cbrt(y) - 16 : 24389.0 / 27 * y;
    return {lightness, 13 * lightness * (4 * at[0] / sum(at) - 4 * white[0] / sum(white)),
            13 * lightness * (9 * at[1] / sum(at) - 9 * white[1] / sum(white))};
}

double difference(std::uint32_t a, std::uint32_t b, const Vision& vision) {
    const auto seen = [&](std::uint32_t hex) {
        Rgb3 rgb = times(vision.seen_from_shown, linear_of(hex));
        for (double& channel : rgb)
            channel = std::clamp(channel, 0.0, 1.0);
        return luv_of(rgb);
    };
    const Rgb3 one = seen(a);
    const Rgb3 other = seen(b);
    return std::hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}

// Twenty times what can just be told apart (1 unit: common practice, no source); the printed or lit patch need not
// be large nor the two side by side.
constexpr double plainly_apart = 20;

constexpr std::array meanings{
    ColourRole::undivided_beam, ColourRole::left_arm, ColourRole::right_arm, ColourRole::clipped,
    ColourRole::shortfall,      ColourRole::good,     ColourRole::dimension};

// Told apart by shape: a measuring line is thin, ends in ticks and bears a number; the undivided beam is a cone of
// glowing rays.
bool differ_in_shape(ColourRole a, ColourRole b) {
    return (a == ColourRole::undivided_beam && b == ColourRole::dimension)
           || (b == ColourRole::undivided_beam && a == ColourRole::dimension);
}

}  // namespace

TEST_CASE(
    "the ruler: white, black and the blind spot of each kind of eye are where they should be") {
    const Rgb3 white = luv_of({1, 1, 1});
    CHECK(near(white[0], 100, 1e-9));  // by definition
    CHECK(near(white[1], 0, 1e-9));
    CHECK(near(white[2], 0, 1e-9));
    // From memory: sRGB red is L* 53.24, u* 175.0, v* 37.8.
    const Rgb3 red = luv_of({1, 0, 0});
    CHECK(near(red[0], 53.24, 0.02));
    CHECK(near(red[1], 175.0, 0.15));
    CHECK(near(red[2], 37.8, 0.15));
    for (const Vision& vision : visions) {
        CAPTURE(vision.name);
        CHECK(near(difference(0xFFFFFF, 0xFFFFFF, vision), 0, 1e-9));
        const Rgb3 seen = times(vision.seen_from_shown, {1, 1, 1});
        for (const double channel : seen)
            CHECK(near(channel, 1, 2e-6));  // white stays white, to the last digit of the table
    }
    // The red and the green that dichromats take for each other; a normal eye has them far apart.
    CHECK(difference(0xB00000, 0x586000, visions[0]) > 100);
    CHECK(difference(0xB00000, 0x586000, visions[2])
          < difference(0xB00000, 0x586000, visions[0]) / 3);
}

TEST_CASE("colours that mean different things stay plainly apart for every kind of eye") {
    int pairs = 0;
    for (const Vision& vision : visions) {
        for (std::size_t i = 0; i < meanings.size(); ++i) {
            for (std::size_t j = i + 1; j < meanings.size(); ++j) {
                const ColourRole a = meanings.at(i);
                const ColourRole b = meanings.at(j);
                if (differ_in_shape(a, b)) continue;
                CAPTURE(vision.name);
                CAPTURE(static_cast<int>(a));
                CAPTURE(static_cast<int>(b));
                CHECK(difference(srgb_hex(a), srgb_hex(b), vision) >= plainly_apart);
                ++pairs;
            }
        }
    }
    CHECK(pairs == 4 * 20);
}

TEST_CASE("the same colours as words stay apart, or the words themselves tell") {
    // The two eyes and the two verdicts, whose numbers stand side by side without a word of their own.
    for (const Vision& vision : visions) {
        CAPTURE(vision.name);
        for (const auto& pair : {std::pair{ColourRole::left_arm, ColourRole::right_arm},
                                 std::pair{ColourRole::good, ColourRole::shortfall},
                                 std::pair{ColourRole::good, ColourRole::clipped}}) {
            CHECK(difference(text_srgb_hex(pair.first), text_srgb_hex(pair.second), vision)
                  >= plainly_apart);
        }
    }
}

TEST_CASE("how severe a finding is shows in the sign's shape and in a word, not in colour alone") {
    std::set<FindingSign> signs;
    std::set<std::string> words;
    std::set<Severity> severities;
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        for (const FindingRow& row : finding_rows(report_of(setup, 16))) {
            severities.insert(row.severity);
            signs.insert(row.sign);
            words.insert(row.word);
        }
    }
    CHECK(severities.size() >= 3);
    CHECK(signs.size() == severities.size());
    CHECK(words.size() == severities.size());
}

TEST_CASE("at night every role can be read as words on every ground") {
    // In red light alone a colour is only as bright as it was: WCAG 2.2, success criterion 1.4.3, of what is left.
    const auto dimmed = [](std::uint32_t hex) {
        const Rgb3 rgb = linear_of(hex);
        return ViewOptions{}.night_brightness
               * (0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]);
    };
    for (const Tone ground : {Tone::ground, Tone::panel}) {
        for (const ColourRole role : meanings) {
            CAPTURE(static_cast<int>(role));
            const double ink = dimmed(text_srgb_hex(role)) + 0.05;
            CHECK(ink / (dimmed(srgb_hex(ground)) + 0.05) >= 4.5);
        }
    }
}

TEST_CASE("the zones of the painted objective are plainly apart for every eye, and in red light by "
          "their brightness") {
    for (const PupilPlace a : pupil_places) {
        for (const PupilPlace b : pupil_places) {
            if (a == b) continue;
            for (const Vision& vision : visions) {
                CAPTURE(std::string(vision.name));
                CAPTURE(std::string(pupil_zone(a).name));
                CAPTURE(std::string(pupil_zone(b).name));
                CHECK(difference(pupil_zone(a).srgb_hex, pupil_zone(b).srgb_hex, vision)
                      >= plainly_apart);
            }
        }
    }
    // At night only the luminance is left: each zone at least 1.4 times as bright as the next, twice a step that is
    // seen side by side at low light (common practice, no source).
    for (std::size_t i = 1; i < pupil_places.size(); ++i) {
        const auto luminance = [](PupilPlace place) {
            const Rgb3 rgb = linear_of(pupil_zone(place).srgb_hex);
            return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
        };
        CHECK(luminance(pupil_places[i - 1]) > 1.4 * luminance(pupil_places[i]));
    }
}
