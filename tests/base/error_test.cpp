#include "base/contract.hpp"
#include "base/error.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("an error tells file, line and sentence, and leaves out what is not known") {
    CHECK(to_text({ErrorCode::bad_input, "no such key", {"my.train.toml", 12}})
          == "my.train.toml:12: no such key");
    CHECK(to_text({ErrorCode::bad_input, "no such key", {"my.train.toml", 0}})
          == "my.train.toml: no such key");
    CHECK(to_text({ErrorCode::bad_input, "no such key", {"", 12}}) == "line 12: no such key");
    CHECK(to_text({ErrorCode::impossible, "no telescope", {}}) == "no telescope");
}

TEST_CASE("a failed result carries the error that was put in") {
    const Result<int> result =
        fail(ErrorCode::not_found, "no glass called 'BK'", {"glasses.toml", 3});
    REQUIRE_FALSE(result.has_value());
    CHECK(result.error()
          == Error{ErrorCode::not_found, "no glass called 'BK'", {"glasses.toml", 3}});
}

TEST_CASE("a broken promise between pieces of the program is thrown, and says what and where") {
    const auto halve = [](int even) {
        BEAMFORK_EXPECTS(even % 2 == 0);
        return even / 2;
    };
    CHECK(halve(4) == 2);
    try {
        halve(3);
        FAIL("the broken promise went unnoticed");
    } catch (const BrokenContract& broken) {
        const std::string what = broken.what();
        CHECK(what.find("even % 2 == 0") != std::string::npos);
        CHECK(what.find("error_test.cpp:") != std::string::npos);
    }
}
