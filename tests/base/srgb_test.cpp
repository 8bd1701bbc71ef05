#include "base/srgb.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("light is encoded as the standard's table of greys says") {
    // Steps of 255 and the light of each, as printed to six digits in tables of sRGB (from memory).
    struct Grey {
        int step;
        double light;
    };
    for (const Grey grey : {Grey{0, 0},
                            {1, 0.000304},
                            {10, 0.003035},
                            {11, 0.003347},
                            {128, 0.215861},
                            {188, 0.502886},
                            {255, 1}}) {
        CAPTURE(grey.step);
        CHECK(near(linear_from_srgb(grey.step / 255.0), grey.light, 5.1e-7));  // last printed digit
        CHECK(near(linear_from_srgb(static_cast<float>(grey.step) / 255.0F), grey.light, 7e-7));
    }
}

TEST_CASE("encoding undoes decoding, on both sides of the knee") {
    for (int step = 0; step <= 1000; ++step) {
        const double encoded = step / 1000.0;
        CHECK(near(srgb_from_linear(linear_from_srgb(encoded)), encoded, 1e-12));
    }
}

TEST_CASE("the straight foot and the curve meet at the knee, to the digits to which it is given") {
    CHECK(near(linear_from_srgb(0.04045), linear_from_srgb(0.0404500001), 1e-7));
    CHECK(near(srgb_from_linear(0.0031308), srgb_from_linear(0.0031308001), 1e-6));
}
