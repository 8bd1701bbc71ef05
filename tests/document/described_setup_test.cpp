#include <algorithm>
#include <array>

#include "document/described_setup.hpp"
#include "document/setup_file.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

namespace beamfork {

namespace {

constexpr std::array every_telescope{TelescopeAnswer::refractor, TelescopeAnswer::newtonian,
                                     TelescopeAnswer::moving_mirror};
constexpr std::array every_diagonal{DiagonalAnswer::unknown, DiagonalAnswer::none,
                                    DiagonalAnswer::prism, DiagonalAnswer::small_mirror,
                                    DiagonalAnswer::large_mirror};

// Plausible answers, none of them a usual value.
std::map<std::string, double> all_numbers() {
    return {{"aperture", 150},      {"focal_length", 1200}, {"back_focus", 90},
            {"head_path", 98},      {"head_width", 22},     {"eyepiece_focal_length", 18},
            {"apparent_field", 65}, {"pupil_distance", 59}};
}

void check_runs(const SetupAnswers& answers) {
    const auto setup = described_setup(answers);
    REQUIRE_MESSAGE(setup.has_value(), setup.error().what);
    CHECK(!order_fault(*setup));
    const auto read = read_setup(write_setup({*setup, {}, {}, {}}), "described");
    REQUIRE_MESSAGE(read.has_value(), to_text(read.error()));
    CHECK(read->notices.empty());
    CHECK(read->document.setup == *setup);
    const auto report = make_report(*setup, setup->chosen, ClippingEffort{48});
    CHECK_MESSAGE(report.has_value(), to_text(report.error()));
}

}  // namespace

TEST_CASE(
    "every combination of kinds and of known numbers makes a setup that reads back and runs") {
    for (const TelescopeAnswer telescope : every_telescope) {
        for (const DiagonalAnswer diagonal : every_diagonal) {
            check_runs({telescope, diagonal, {}});
            check_runs({telescope, diagonal, all_numbers()});
        }
        // Each number known alone, and each unknown alone.
        for (const auto& [key, value] : all_numbers()) {
            check_runs({telescope, DiagonalAnswer::prism, {{key, value}}});
            auto but_one = all_numbers();
            but_one.erase(key);
            check_runs({telescope, DiagonalAnswer::prism, but_one});
        }
    }
}

TEST_CASE("small and large telescopes of usual focal ratios can be described") {
    for (const TelescopeAnswer telescope : every_telescope) {
        for (const double aperture : {70.0, 130.0, 300.0}) {
            for (const double ratio : {6.0, 10.0, 14.0}) {
                if (telescope == TelescopeAnswer::moving_mirror && aperture * ratio < 600) continue;
                check_runs({telescope,
                            DiagonalAnswer::unknown,
                            {{"aperture", aperture}, {"focal_length", aperture * ratio}}});
            }
        }
    }
}

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
    CHECK(refused.error().what.find("Telescope: ") == 0);
    CHECK(!described_setup({TelescopeAnswer::newtonian,
                            DiagonalAnswer::none,
                            {{"aperture", 300}, {"focal_length", 400}}}));
}

}  // namespace beamfork
