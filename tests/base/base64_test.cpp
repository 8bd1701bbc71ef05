#include <string_view>
#include <vector>

#include "base/base64.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("base64 agrees with the test vectors of RFC 4648, section 10") {
    const auto coded = [](std::string_view text) {
        return base64(std::vector<std::uint8_t>(text.begin(), text.end()));
    };
    CHECK(coded("").empty());
    CHECK(coded("f") == "Zg==");
    CHECK(coded("fo") == "Zm8=");
    CHECK(coded("foo") == "Zm9v");
    CHECK(coded("foob") == "Zm9vYg==");
    CHECK(coded("fooba") == "Zm9vYmE=");
    CHECK(coded("foobar") == "Zm9vYmFy");
    CHECK(base64(std::vector<std::uint8_t>{0xFB, 0xEF, 0xFF})
          == "++//");  // 62 62 63 63 in its table 1
}
