#include <algorithm>
#include <cmath>

#include "parts/focuser.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "scene/picture/folded_axis.hpp"
#include "scene/picture/picture_input.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::vector<Mark> diamonds(const Frame& frame, ColourRole role) {
    std::vector<Mark> found;
    for (const Mark& mark : frame.marks) {
        if (mark.shape == MarkShape::diamond && mark.role == role) found.push_back(mark);
    }
    return found;
}

bool has_label(const Frame& frame, const std::string& text) {
    return std::any_of(frame.labels.begin(), frame.labels.end(),
                       [&](const Label& label) { return label.text == text; });
}

Frame gap_alone(const Setup& setup, const Report& report) {
    const PictureEffort effort;
    Frame frame;
    add_focus_gap(frame, {setup, report, effort});
    return frame;
}

double length_of(const std::vector<Point>& line) {
    double sum = 0;
    for (std::size_t i = 1; i < line.size(); ++i)
        sum += glm::distance(line[i - 1], line[i]);
    return sum;
}

}  // namespace

TEST_CASE("a focus that falls short is marked where it is and dimensioned in mm") {
    Setup setup = short_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {128};
    const Report report = report_of(setup);
    const double gap = report.gap(Eye::left).value;
    REQUIRE(gap > 5);
    const Frame frame = gap_alone(setup, report);
    CHECK(diamonds(frame, ColourRole::shortfall).size() == 2);
    CHECK(diamonds(frame, ColourRole::good).empty());
    REQUIRE(frame.labels.size() == 1);  // said once: both eyes agree
    CHECK(frame.labels[0].text
          == "focus " + std::to_string(std::lround(gap * 10) / 10) + "."
                 + std::to_string(std::lround(gap * 10) % 10) + " mm short");
    // The focus lies in air here: the arrow, the longest of the drawn lines along the arm, is as long as the gap.
    float arrow = 0;
    const glm::vec3 along(report.train.path(Eye::left).world_from_field_stop.z());
    for (const Line& line : frame.lines) {
        CHECK(line.role == ColourRole::shortfall);
        if (!line.dashed) arrow = std::max(arrow, std::abs(glm::dot(line.to - line.from, along)));
    }
    CHECK(near(arrow, gap, 1e-3));  // places are floats
}

TEST_CASE("in focus there is a green diamond on each field stop and no gap") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const Frame frame = gap_alone(setup, report);
    CHECK(frame.lines.empty());
    const auto marks = diamonds(frame, ColourRole::good);
    REQUIRE(marks.size() == 2);
    for (std::size_t side = 0; side < 2; ++side) {
        const Point stop = report.train.paths[side].world_from_field_stop.origin;
        CHECK(near(glm::distance(Point(marks[side].at), stop), 0, 1e-3));
    }
    CHECK(has_label(frame, "in focus"));
}

TEST_CASE("a focus too far out is told as such") {
    Setup setup = short_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {260};
    setup.parts[1].body.get<Focuser>().travel = {60};
    const Report report = report_of(setup);
    REQUIRE(report.gap(Eye::left) < Millimetres{});
    const Frame frame = build_frame(setup, report);
    const bool told = std::any_of(frame.labels.begin(), frame.labels.end(), [](const Label& label) {
        return label.text.find("mm too far") != std::string::npos
               && label.role == LabelRole::dimension;
    });
    CHECK(told);
    // Light is followed to its focus and beyond.
    const EyePath& path = report.train.path(Eye::left);
    double farthest = 0;
    for (const LightRibbon& ribbon : frame.light) {
        farthest = std::max(farthest, path.world_from_field_stop.point_in(Point(ribbon.to)).z);
    }
    CHECK(farthest > report.image_behind_stop[0].value + 5);
}

TEST_CASE("arms of unequal light path have their gaps told apart") {
    Setup setup = cured_setup();
    setup.parts[5].body.get<SplitterHead>().compensator = Millimetres{20};
    const Report report = report_of(setup);
    REQUIRE(std::abs(report.gap(Eye::left).value - report.gap(Eye::right).value) > 1);
    const Frame frame = gap_alone(setup, report);
    CHECK(frame.labels.size() == 2);
}

namespace {

struct Arrow {
    std::vector<Point> heads;  // where two barbs and a shaft meet
    double shaft = 0;          // length of the lines that are no barbs, per head
};

// From the drawn lines alone: a barb begins at a head, where another one does.
Arrow arrow_in(const Frame& frame) {
    const auto begins_at = [&](const glm::vec3& point) {
        return std::count_if(frame.lines.begin(), frame.lines.end(),
                             [&](const Line& line) { return !line.dashed && line.from == point; });
    };
    Arrow arrow;
    for (const Line& line : frame.lines) {
        if (line.dashed) continue;
        if (begins_at(line.from) < 2) {
            arrow.shaft += glm::distance(line.from, line.to);
        } else if (arrow.heads.empty() || glm::distance(arrow.heads.back(), Point(line.from)) > 0) {
            arrow.heads.emplace_back(line.from);
        }
    }
    arrow.shaft /= static_cast<double>(std::max<std::size_t>(1, arrow.heads.size()));
    return arrow;
}

}  // namespace

TEST_CASE(
    "the arrow has one head for each eye, at the field stop, whichever side the image is on and "
    "through every fold") {
    // Where the image lies follows from the budget: what the drawtube misses, in the air before or behind the field
    // stop; in glass it is longer by the index. The eyes need no correction: the eyepiece wants it in its field stop.
    for (const double back_focus : {128.0, 116.0, 90.0, 260.0}) {
        CAPTURE(back_focus);
        Setup setup = short_setup();
        setup.parts[0].body.get<Refractor>().back_focus = {back_focus};
        setup.parts[1].body.get<Focuser>().travel = {60};
        const Report report = report_of(setup);
        const double missing =
            report.budget.shortfall.value * (report.budget.shortfall_is_inward ? 1 : -1);
        REQUIRE(std::abs(missing) > 5);
        const Arrow arrow = arrow_in(gap_alone(setup, report));
        REQUIRE(arrow.heads.size() == 2);
        const double air = setup.parts[4].body.get<SplitterHead>().inside().seat_height.value;
        const EyePath& left = report.train.path(Eye::left);
        const double index = left.steps[left.steps.size() - 3].index[primary_wavelength];
        if (missing < air) CHECK(near(arrow.shaft, std::abs(missing), 1e-3));
        if (missing > air) CHECK(arrow.shaft > air + 0.9 * (missing - air));
        if (missing > air) CHECK(arrow.shaft <= air + index * (missing - air) + 1e-3);
        for (std::size_t side = 0; side < 2; ++side) {
            const Pose& stop = report.train.paths[side].world_from_field_stop;
            CHECK(near(stop.point_in(arrow.heads[side]).z, 0, 1e-3));
        }
    }
}

TEST_CASE("the folded axis is as long in glass as its reduced length times the index") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const EyePath& left = report.train.path(Eye::left);
    // Behind the compensator there is only air up to the field stop, in front of it glass of one index.
    const double air = setup.parts[4].body.get<SplitterHead>().inside().seat_height.value;
    CHECK(near(length_of(folded_axis(left, -air, 0)), air, 1e-9));
    const double index = left.steps[left.steps.size() - 3].index[primary_wavelength];
    REQUIRE(index > 1.5);
    CHECK(near(length_of(folded_axis(left, -air - 10, 0)), air + 10 * index, 1e-9));
    CHECK(near(length_of(folded_axis(left, 0, 7)), 7, 1e-9));
    const auto back = folded_axis(left, 0, -air - 10);
    CHECK(back.front() == left.world_from_field_stop.origin);
    CHECK(near(length_of(back), air + 10 * index, 1e-9));
    // The rhomboid folds the right arm: the line has corners there.
    const EyePath& right = report.train.path(Eye::right);
    const auto corners = folded_axis(right, -air - 30, 0);
    CHECK(corners.size() > 3);
    CHECK(near(length_of(corners), air + 30 * index, 1e-9));
}

TEST_CASE("the drawtube's scale shows its travel and the wanted place on it; a fault has its one "
          "arrow elsewhere") {
    const PictureEffort effort;
    for (const Setup& setup : {short_setup(), cured_setup()}) {
        const Report report = report_of(setup);
        Frame frame;
        add_drawtube_scale(frame, {setup, report, effort});
        double longest = 0;
        for (const Line& line : frame.lines) {
            if (!line.dashed)
                longest = std::max(longest, static_cast<double>(glm::distance(line.from, line.to)));
        }
        CHECK(near(longest, report.budget.travel.value, 1e-3));
        CHECK(diamonds(frame, ColourRole::shortfall).empty());
        for (const Line& line : frame.lines)
            CHECK(line.role != ColourRole::shortfall);
        if (!report.budget.reaches) {
            CHECK(has_label(frame, "fully in, 80 mm travel"));
            continue;
        }
        REQUIRE(diamonds(frame, ColourRole::good).size() == 1);
        const Mark wanted = diamonds(frame, ColourRole::good)[0];
        const double zero = setup.parts[0].body.get<Refractor>().focal_length.value
                            - setup.parts[0].body.get<Refractor>().back_focus.value;
        CHECK(near(wanted.at.z, zero + report.budget.wanted_drawtube.value, 1e-3));
    }
}
