#include "document/described_setup.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

namespace beamfork {

TEST_CASE("what is known is taken without a guess's doubt, what is not is named with its doubt") {
    const auto known =
        described_setup({TelescopeAnswer::refractor, DiagonalAnswer::none, {{"back_focus", 87.5}}});
    REQUIRE(known);
    const Part& telescope = known->parts[0];
    CHECK(telescope.body.get<Refractor>().back_focus == Millimetres{87.5});
    CHECK(!telescope.tolerances.contains("back_focus_mm"));
    CHECK(telescope.tolerances.at("aperture_mm") == Tolerance{20, KnownBy::guessed});
    CHECK(known->story.find("aperture 100 ± 20 mm") != std::string::npos);
    CHECK(known->story.find("Back focus") == std::string::npos);
    CHECK(find_part<PrismDiagonal>(*known) == nullptr);
}

TEST_CASE("the field stop is focal length times apparent field in radians") {
    const auto setup = described_setup({TelescopeAnswer::refractor,
                                        DiagonalAnswer::none,
                                        {{"eyepiece_focal_length", 10}, {"apparent_field", 60}}});
    REQUIRE(setup);
    // 10 mm x pi / 3
    CHECK(near(find_part<EyepiecePair>(*setup)->field_stop.value, 10.471975511965976, 1e-12));
}

TEST_CASE("an answer that cannot be is refused with the part and the reason") {
    const auto refused =
        described_setup({TelescopeAnswer::refractor, DiagonalAnswer::none, {{"aperture", 5000}}});
    REQUIRE(!refused);
    CHECK(refused.error().what.find("Telescope: Aperture must be from ") == 0);
    CHECK(!described_setup({TelescopeAnswer::newtonian,
                            DiagonalAnswer::none,
                            {{"aperture", 300}, {"focal_length", 400}}}));
}

}  // namespace beamfork
