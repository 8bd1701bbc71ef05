// A setup made of a few answers, whichever they are, can be saved, read back and studied.
#include <array>
#include <map>
#include <string>

#include "document/described_setup.hpp"
#include "document/setup_file.hpp"
#include "study/findings/report.hpp"

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

}  // namespace beamfork
