// What the image-quality panel says and draws.
#include <algorithm>
#include <set>

#include "parts/eyepiece_pair.hpp"
#include "scene/image/image_quality_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "the sentence on image quality gives the share that is kept and says when focus is out of "
    "reach") {
    Setup short_of_focus = short_setup();
    for (Part& part : short_of_focus.parts) {
        if (auto* pair = part.body.as<EyepiecePair>()) pair->focal_length = {6};
    }
    const ImageRows rows = image_quality_rows(report_of(short_of_focus));
    CHECK(rows.sentence.find("% of it is kept through this eye") != std::string::npos);
    CHECK(rows.sentence.find("which the drawtube does not reach") != std::string::npos);
    const Setup cured = cured_setup();
    const ImageRows better = image_quality_rows(report_of(cured));
    CHECK(better.sentence.find("does not reach") == std::string::npos);
    // At a wide exit pupil the glass undoes some of the eye's own colour: no share above all of it is told.
    const Report wide = report_of(short_setup());
    REQUIRE(wide.image_quality[0].kept(wide.image_quality[0].axis) > 1.02);
    CHECK(image_quality_rows(wide).sentence.find("undoes some of the eye's own colour")
          != std::string::npos);
}

TEST_CASE("every number on image quality has a unit, a help, and its fellow at every place") {
    const Setup setup = short_setup();
    const ImageRows rows = image_quality_rows(report_of(setup));
    const auto& first = rows.eyes[0].points[0].values;
    std::set<std::string> labels;
    for (const ValueRow& row : first) {
        CAPTURE(row.label);
        CHECK(labels.insert(row.label).second);
        CHECK_FALSE(row.unit.empty());
        CHECK(row.help.size() > 30);
    }
    for (const EyeImageRows& eye : rows.eyes) {
        for (const ImagePointRows& point : eye.points) {
            REQUIRE(point.values.size() == first.size());
            for (std::size_t i = 0; i < first.size(); ++i)
                CHECK(point.values[i].label == first[i].label);
        }
    }
}

TEST_CASE("the light within a circle grows with the circle and never beats the perfect image") {
    const Setup setup = short_setup();
    const ImageRows rows = image_quality_rows(report_of(setup));
    REQUIRE(rows.radii.size() == rows.perfect_energy.size());
    CHECK(rows.radii.front() == 0);
    for (const EyeImageRows& eye : rows.eyes) {
        const auto& energy = eye.points[0].energy;
        REQUIRE(energy.size() == rows.radii.size());
        CHECK(std::is_sorted(energy.begin(), energy.end()));
        for (std::size_t i = 0; i < energy.size(); ++i)
            CHECK(energy[i] <= rows.perfect_energy[i] + 0.02);  // the grid's cells
    }
    // Half of the perfect light lies within 0.5348 wavelength N (root of 1 - J0^2 - J1^2 = 1/2, by mpmath).
    const double unit = rows.airy_radius / 1.22;
    std::size_t i = 0;
    while (rows.perfect_energy[i] < 0.5)
        ++i;
    CHECK(rows.radii[i] >= 0.5348 * unit);
    CHECK(rows.radii[i - 1] < 0.5348 * unit);
}

TEST_CASE("spots come in three colours, as many rays of each as arrive, about a common middle") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const ImageRows rows = image_quality_rows(report);
    for (std::size_t side = 0; side < 2; ++side) {
        const ImagePointRows& axis = rows.eyes[side].points[0];
        REQUIRE(axis.is_formed);
        for (const auto& spots : axis.spots) {
            CHECK(spots.size() == axis.spots[primary_wavelength].size());
            for (const glm::dvec2& at : spots)
                CHECK(glm::length(at) <= axis.widest + 1e-9);  // rounding
        }
    }
}
