#include <cmath>
#include <limits>
#include <map>

#include "glass/glass.hpp"
#include "reference/glass_indices.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Glass glass(const char* name) {
    const auto found = standard_catalogue().find(name);
    REQUIRE(found.has_value());
    return *found;
}

double index(const char* name, Micrometres wavelength) {
    const auto n = refractive_index(glass(name), wavelength);
    REQUIRE(n.has_value());
    return *n;
}

}  // namespace

TEST_CASE("the spectral lines lie where the table of lines has them") {
    CHECK(near(spectral_line::d.value * 1000, reference::line_d_nm, 1e-9));  // rounding
    CHECK(near(spectral_line::F.value * 1000, reference::line_F_nm, 1e-9));
    CHECK(near(spectral_line::C.value * 1000, reference::line_C_nm, 1e-9));
    CHECK(near(spectral_line::e.value * 1000, reference::line_e_nm, 1e-9));
}

TEST_CASE("each glass has its catalogue's index at the lines d, F, C and e") {
    const std::map<char, double> wavelength_nm{{'d', reference::line_d_nm},
                                               {'F', reference::line_F_nm},
                                               {'C', reference::line_C_nm},
                                               {'e', reference::line_e_nm}};
    for (const auto& row : reference::glass_indices) {
        CAPTURE(row.glass);
        CAPTURE(row.line);
        // Half of the reference's last digit, and rounding.
        CHECK(near(index(row.glass, nanometres(wavelength_nm.at(row.line))), row.index, 6e-7));
    }
}

TEST_CASE("each glass has the index and Abbe number its catalogue prints") {
    for (const auto& row : reference::printed_glasses) {
        CAPTURE(row.glass);
        CHECK(near(index(row.glass, spectral_line::d), row.nd, 1e-5));  // last printed digit
        const auto abbe = abbe_number(glass(row.glass));
        REQUIRE(abbe.has_value());
        CHECK(near(*abbe, row.Vd, 0.01));  // last printed digit
    }
    for (const auto& row : reference::abbe_numbers) {
        CAPTURE(row.glass);
        CHECK(near(abbe_number(glass(row.glass)).value(), row.number,
                   6e-4));  // last digit of the reference
    }
}

TEST_CASE("glass bends blue light more than red at every wavelength the eye sees") {
    for (const Glass& each : standard_catalogue().glasses) {
        CAPTURE(each.name);
        double before = std::numeric_limits<double>::infinity();
        for (double nm = 400; nm <= 700; nm += 10) {
            const auto n = refractive_index(each, nanometres(nm));
            REQUIRE(n.has_value());
            CHECK(*n < before);
            CHECK(*n > 1.3);
            before = *n;
        }
    }
}

TEST_CASE("outside its measured range a glass has no index, and the error names the range") {
    const Glass crown = glass("N-BK7");
    for (const double nm :
         {299.0, 2501.0, 0.0, -500.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        CAPTURE(nm);
        const auto n = refractive_index(crown, nanometres(nm));
        REQUIRE_FALSE(n.has_value());
        CHECK(n.error().what.find("N-BK7 is known from 0.3 to 2.5 um") != std::string::npos);
    }
    CHECK(refractive_index(crown, crown.shortest).has_value());
    CHECK(refractive_index(crown, crown.longest).has_value());
    Glass infrared = crown;
    infrared.shortest = {1.0};
    CHECK_FALSE(abbe_number(infrared).has_value());
}
