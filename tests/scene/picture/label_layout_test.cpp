#include <random>

#include "scene/picture/label_layout.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr Viewport labelled_view{900, 600};

glm::vec2 measure_by_letters(const Label& label) {
    return {8.0F * static_cast<float>(label.text.size()) + 12, 22};
}

bool overlap(const PlacedLabel& a, const PlacedLabel& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

bool is_in_picture(const PlacedLabel& placed) {
    return placed.low.x >= 0 && placed.low.y >= 0 && placed.high.x <= labelled_view.width
           && placed.high.y <= labelled_view.height;
}

std::vector<Label> random_labels(std::mt19937& random, int count, float spread) {
    std::uniform_real_distribution<float> place(-spread, spread);
    std::uniform_int_distribution<int> letters(1, 30);
    std::uniform_int_distribution<int> priority(0, 9);
    std::vector<Label> labels;
    for (int i = 0; i < count; ++i) {
        Label label;
        label.at = {place(random), place(random), place(random)};
        label.text.assign(static_cast<std::size_t>(letters(random)), 'a');
        label.priority = priority(random);
        labels.push_back(label);
    }
    return labels;
}

bool is_seen(const Label& label, const Camera& camera) {
    const auto at = project(camera, label.at, labelled_view);
    return at && at->x >= 0 && at->y >= 0 && at->x <= labelled_view.width
           && at->y <= labelled_view.height;
}

}  // namespace

TEST_CASE("no two names ever overlap, all lie in the picture, and the most important one stays") {
    std::mt19937 random(20250307);
    for (int round = 0; round < 60; ++round) {
        // From a crowd in one place to labels all over and behind the viewer.
        const auto labels =
            random_labels(random, 1 + round, 5.0F + 12.0F * static_cast<float>(round));
        Camera camera;
        camera.yaw_rad = static_cast<float>(round);
        camera.pitch_rad = 0.02F * static_cast<float>(round);
        camera.distance_mm = 500;
        const auto placed = lay_out_labels(labels, camera, labelled_view, measure_by_letters);
        for (std::size_t i = 0; i < placed.size(); ++i) {
            CHECK(is_in_picture(placed[i]));
            CHECK(is_seen(labels[placed[i].label], camera));
            for (std::size_t k = i + 1; k < placed.size(); ++k)
                CHECK_FALSE(overlap(placed[i], placed[k]));
        }
        const Label* best = nullptr;
        for (const Label& label : labels) {
            if (is_seen(label, camera) && (best == nullptr || label.priority < best->priority))
                best = &label;
        }
        REQUIRE((best == nullptr) == placed.empty());
        if (best != nullptr) CHECK(&labels[placed.front().label] == best);
    }
}

TEST_CASE("a crowd leaves out the least important names") {
    std::vector<Label> labels(200);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        labels[i].text = "a name of some length in a crowd";
        labels[i].priority = static_cast<int>(labels.size() - i);
    }
    const auto placed = lay_out_labels(labels, Camera{}, labelled_view, measure_by_letters);
    CHECK(placed.size() > 5);
    CHECK(placed.size() < labels.size());
    for (std::size_t i = 1; i < placed.size(); ++i) {
        CHECK(labels[placed[i - 1].label].priority < labels[placed[i].label].priority);
    }
}

TEST_CASE("a leader ends on the edge of its box and is nearest to the labelled place there") {
    std::mt19937 random(7);
    const auto labels = random_labels(random, 25, 80);
    for (const PlacedLabel& placed :
         lay_out_labels(labels, Camera{}, labelled_view, measure_by_letters)) {
        CHECK(placed.leader == glm::clamp(placed.anchor, placed.low, placed.high));
        if (!placed.has_leader) CHECK(glm::distance(placed.leader, placed.anchor) <= 6);
    }
}

TEST_CASE("names keep off the light where there is room") {
    const Setup setup = cured_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    const Camera camera = standard_view(StandardView::overview, frame, labelled_view.aspect());
    const LightCover light = light_cover(frame, camera, labelled_view);
    const auto hidden = [&](const LightCover& known) {
        float sum = 0;
        for (const auto& placed :
             lay_out_labels(frame.labels, camera, labelled_view, measure_by_letters, known)) {
            sum += light.share_under(placed.low, placed.high);
        }
        return sum;
    };
    CHECK(hidden({}) > 1);
    CHECK(hidden(light) < 0.5F * hidden({}));
}

TEST_CASE("the cover of the light is lit along a ray and dark elsewhere") {
    Frame frame;
    frame.light.push_back({{0, 0, -100}, {0, 0, 100}});
    Camera camera;  // from -x: the ray runs from left to right through the middle
    const LightCover cover = light_cover(frame, camera, labelled_view);
    const auto middle = project(camera, {0, 0, 0}, labelled_view);
    REQUIRE(middle);
    CHECK(cover.share_under(*middle - 1.0F, *middle + 1.0F) > 0.2F);
    CHECK(cover.share_under({0, 0}, {labelled_view.width, 200}) == 0);
    CHECK(LightCover{}.share_under({0, 0}, {100, 100}) == 0);
}
