#include <algorithm>

#include "parts/shifter.hpp"
#include "scene/picture/fingerprint.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the same setup gives the same picture, bit by bit") {
    const Setup setup = cured_setup();
    const Frame once = build_frame(setup, report_of(setup));
    const Frame again = build_frame(setup, report_of(setup));
    CHECK(once.revision == again.revision);
    CHECK(once.revision != 0);
    REQUIRE(once.light.size() == again.light.size());
    for (std::size_t i = 0; i < once.light.size(); ++i) {
        CHECK(once.light[i].from == again.light[i].from);
        CHECK(once.light[i].to == again.light[i].to);
    }
}

TEST_CASE("the revision changes with anything that is seen") {
    const Setup setup = short_setup();
    Frame frame = build_frame(setup, report_of(setup));
    REQUIRE(frame.revision == fingerprint(frame));
    const auto changes = [&](auto&& edit) {
        Frame other = frame;
        edit(other);
        return fingerprint(other) != frame.revision;
    };
    CHECK(changes([](Frame& f) { f.meshes[0].vertices[0].position.x += 1; }));
    CHECK(changes([](Frame& f) { f.meshes[0].finish = Finish::mirror; }));
    CHECK(changes([](Frame& f) { f.light.back().strength *= 0.5F; }));
    CHECK(changes([](Frame& f) { f.light.back().role = ColourRole::ghost; }));
    CHECK(changes([](Frame& f) { f.light.back().rank += 0.25F; }));
    CHECK(changes([](Frame& f) { f.arrival.is_known = !f.arrival.is_known; }));
    CHECK(changes([](Frame& f) { f.arrival.stop[1].y += 1; }));
    CHECK(changes([](Frame& f) { f.lines.back().role = ColourRole::shortfall; }));
    CHECK(changes([](Frame& f) { f.lines.back().shade *= 0.5F; }));
    CHECK(changes([](Frame& f) { f.marks.back().role = ColourRole::good; }));
    CHECK(changes([](Frame& f) { f.discs[0].role = ColourRole::undivided_beam; }));
    CHECK(changes([](Frame& f) { f.light.front().clipped = !f.light.front().clipped; }));
    CHECK(changes([](Frame& f) { f.light.back().rank += 0.25F; }));
    CHECK(changes([](Frame& f) { f.arrival.is_known = !f.arrival.is_known; }));
    CHECK(changes([](Frame& f) { f.arrival.stop[1].y += 1; }));
    CHECK(changes([](Frame& f) { f.arrival.at_splitter_mm += 1e-9; }));
    CHECK(changes([](Frame& f) { f.lines.back().dashed = !f.lines.back().dashed; }));
    CHECK(changes([](Frame& f) { f.marks.back().shape = MarkShape::ring; }));
    CHECK(changes([](Frame& f) { f.discs[1].light[5] += 0.1F; }));
    CHECK(changes([](Frame& f) { f.labels.back().text += "."; }));
    CHECK(changes([](Frame& f) { f.ray_count += 1; }));
    CHECK_FALSE(changes([](Frame& f) { f.revision += 1; }));
}

TEST_CASE("a slider that moves changes the picture") {
    Setup setup = cured_setup();
    const Frame before = build_frame(setup, report_of(setup));
    setup.parts[4].body.get<Shifter>().lens_offset.value += 0.1;
    CHECK(build_frame(setup, report_of(setup)).revision != before.revision);
}

TEST_CASE("every part in the light and both eyes are named, the most important first") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    for (const std::size_t part : parts_in_light(setup, setup.chosen)) {
        const auto count =
            std::count_if(frame.labels.begin(), frame.labels.end(), [&](const Label& label) {
                return label.role == LabelRole::part && label.part == static_cast<int>(part)
                       && label.text == setup.parts[part].name;
            });
        CHECK(count == 1);
    }
    CHECK(std::is_sorted(frame.labels.begin(), frame.labels.end(),
                         [](const Label& a, const Label& b) { return a.priority < b.priority; }));
    for (const char* eye : {"left eye", "right eye"}) {
        const auto found = std::find_if(frame.labels.begin(), frame.labels.end(),
                                        [&](const Label& label) { return label.text == eye; });
        REQUIRE(found != frame.labels.end());
        CHECK((found->role == LabelRole::left_eye) == (std::string(eye) == "left eye"));
        CHECK((found->at.x < 0) == (std::string(eye) == "left eye"));
    }
}

TEST_CASE("light leaves towards the observer: up behind a diagonal, straight on without one") {
    Setup setup = short_setup();
    CHECK(glm::distance(build_frame(setup, report_of(setup)).eye_axis, glm::vec3(0, 1, 0)) < 1e-5F);
    setup.parts.erase(setup.parts.begin() + 3);
    setup = with_valid_choice(setup);
    CHECK(glm::distance(build_frame(setup, report_of(setup)).eye_axis, glm::vec3(0, 0, 1)) < 1e-5F);
}

TEST_CASE("a stage picture spends more rays and finer circles than a slider's") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const Frame quick = build_frame(setup, report);
    const Frame fine = build_frame(setup, report, stage_effort());
    CHECK(fine.light.size() > quick.light.size());
    CHECK(fine.ray_count > quick.ray_count);
    CHECK(fine.discs[0].size > quick.discs[0].size);
}
