// The names in every demo's picture, at several sizes, from every standard view and from many sides between them: they
// follow the light, and no leader crosses another. The rule is the house's own; the proof is plane geometry.
#include <cmath>
#include <numbers>

#include "desk/open_setup.hpp"
#include "scene/picture/picture.hpp"
#include "scene/picture/picture_words.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr std::array sizes{Viewport{640, 360}, Viewport{700, 900}, Viewport{960, 600},
                           Viewport{1280, 720}, Viewport{1920, 1080}};

struct DemoPicture {
    std::string name;
    Frame frame;
};

const std::vector<DemoPicture>& pictures() {
    static const auto all = [] {
        std::vector<DemoPicture> made;
        for (const Demo& demo : demos()) {
            const auto read = open_demo(demo.asset);
            REQUIRE(read.has_value());
            const Setup& setup = read->document.setup;
            const auto report = make_report(setup, setup.chosen);
            REQUIRE(report.has_value());
            made.push_back({demo.name, build_frame(setup, *report)});
        }
        return made;
    }();
    return all;
}

struct Seen {
    const DemoPicture& picture;
    Camera camera;
    Viewport viewport;

    [[nodiscard]] PictureWords words() const {
        const float scale =
            std::max(0.9F, viewport.height / 900);  // as letters grow with a picture
        const LabelMeasure by_letters = [scale](const Label& label) {
            return scale * glm::vec2{7.2F * static_cast<float>(label.text.size()) + 12, 21};
        };
        return lay_out_words(picture.frame.labels, camera, viewport, by_letters,
                             light_cover(picture.frame, camera, viewport));
    }
};

void in_every_view(const std::function<void(const Seen&)>& check) {
    for (const DemoPicture& picture : pictures()) {
        for (const Viewport viewport : sizes) {
            for (const StandardView view : all_standard_views) {
                const Camera camera = standard_view(view, picture.frame, viewport.aspect());
                CAPTURE(picture.name);
                CAPTURE(name_of(view));
                CAPTURE(viewport.width);
                check({picture, camera, viewport});
                Camera turned = camera;
                turned.yaw_rad += 0.7F;
                turned.pitch_rad += 0.3F;
                check({picture, turned, viewport});
            }
        }
    }
}

std::vector<PlacedWords> part_names(const Seen& seen, const PictureWords& words) {
    std::vector<PlacedWords> names;
    for (const PlacedWords& name : words.names)
        if (seen.picture.frame.labels[name.rows.front()].role == LabelRole::part)
            names.push_back(name);
    return names;
}

// Radians once round, in one sense or the other, through the places in their order and back to the first.
double way_round(const std::vector<double>& angles, double sense) {
    constexpr double turn = 2 * std::numbers::pi;
    double sum = 0;
    for (std::size_t i = 0; i < angles.size(); ++i) {
        const double step = sense * (angles[(i + 1) % angles.size()] - angles[i]);
        sum += step - turn * std::floor(step / turn);
    }
    return sum;
}

bool meet(const PixelBox& a, const PixelBox& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

}  // namespace

TEST_CASE(
    "once round the picture the parts' names follow each other as the light meets the parts") {
    std::size_t tried = 0;
    in_every_view([&](const Seen& seen) {
        const auto names = part_names(seen, seen.words());
        glm::vec2 middle{0};
        for (const PlacedWords& name : names)
            middle += name.leaders.front().from / static_cast<float>(names.size());
        std::vector<double> angles;
        for (std::size_t i = 0; i < names.size(); ++i) {
            const glm::vec2 at = names[i].leaders.front().to - middle;
            angles.push_back(std::atan2(at.y, at.x));
            if (i == 0) continue;
            CHECK(seen.picture.frame.labels[names[i - 1].rows.front()].along
                  < seen.picture.frame.labels[names[i].rows.front()].along);
        }
        if (names.size() < 3) return;
        ++tried;
        const double way = std::min(way_round(angles, 1), way_round(angles, -1));
        CHECK(way < 2 * std::numbers::pi + 1e-3);
    });
    CHECK(tried > 400);
}

TEST_CASE("no leader crosses another or runs through another's words, and no words overlap") {
    in_every_view([&](const Seen& seen) {
        const PictureWords words = seen.words();
        const auto boxes = boxes_of(words);
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            CHECK(boxes[a].low.x >= 0);
            CHECK(boxes[a].low.y >= 0);
            CHECK(boxes[a].high.x <= seen.viewport.width);
            CHECK(boxes[a].high.y <= seen.viewport.height);
            for (std::size_t b = a + 1; b < boxes.size(); ++b)
                CHECK_FALSE(meet(boxes[a], boxes[b]));
        }
        const auto names = part_names(seen, words);
        for (const PlacedWords& a : names) {
            for (const PlacedWords& b : names) {
                if (&a == &b) continue;
                for (const Leader& from_a : a.leaders) {
                    CHECK_FALSE(crosses(from_a.from, from_a.to, b.box));
                    for (const Leader& from_b : b.leaders)
                        CHECK_FALSE(stretches_meet(from_a.from, from_a.to, from_b.from, from_b.to));
                }
            }
        }
    });
}

TEST_CASE("a picture has at most eight names and three lines of clipped light, and always the "
          "head's name") {
    in_every_view([&](const Seen& seen) {
        const PictureWords words = seen.words();
        const auto& labels = seen.picture.frame.labels;
        std::size_t clipped = 0;
        for (const PlacedWords& name : words.names)
            for (const std::size_t row : name.rows)
                clipped += labels[row].role == LabelRole::clipped ? 1 : 0;
        CHECK(clipped <= 3);
        CHECK(part_names(seen, words).size() <= 8);
    });
    for (const DemoPicture& picture : pictures()) {
        for (const Viewport viewport :
             {Viewport{960, 600}, Viewport{1280, 720}, Viewport{1920, 1080}}) {
            CAPTURE(picture.name);
            CAPTURE(viewport.width);
            const Seen seen{picture,
                            standard_view(StandardView::overview, picture.frame, viewport.aspect()),
                            viewport};
            const auto words = seen.words();
            const auto names = part_names(seen, words);
            const bool has_head = std::any_of(names.begin(), names.end(), [&](const auto& name) {
                return picture.frame.labels[name.rows.front()].text.find("head")
                       != std::string::npos;  // so all demos call it
            });
            CHECK(has_head);
            CHECK(names.size() >= 3);
        }
    }
}

TEST_CASE("pointing at a part tells all that is clipped in it and moves no other words") {
    for (const DemoPicture& picture : pictures()) {
        const Viewport viewport{1280, 720};
        const Seen seen{
            picture, standard_view(StandardView::rear, picture.frame, viewport.aspect()), viewport};
        const PictureWords words = seen.words();
        const LabelMeasure even = [](const Label&) { return glm::vec2{200, 21}; };
        for (const Label& hidden : picture.frame.labels) {
            if (!hidden.on_hover) continue;
            const auto whole = whole_words_of(hidden.part, words, picture.frame.labels, seen.camera,
                                              viewport, even);
            if (!whole) continue;  // the part is not in this picture
            const bool is_told = std::any_of(whole->rows.begin(), whole->rows.end(), [&](auto row) {
                return picture.frame.labels[row].text == hidden.text;
            });
            CHECK(is_told);
        }
    }
}

TEST_CASE("every overview shows all from the focuser to the eyes, and shows it large") {
    for (const DemoPicture& picture : pictures()) {
        for (const Viewport viewport : sizes) {
            const Camera camera =
                standard_view(StandardView::overview, picture.frame, viewport.aspect());
            glm::vec2 low{1e9F};
            glm::vec2 high{-1e9F};
            const Bounds& head = picture.frame.head_bounds;
            for (int corner = 0; corner < 8; ++corner) {
                const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
                const auto at = project(camera, glm::mix(head.low, head.high, share), viewport);
                REQUIRE(at.has_value());
                low = glm::min(low, *at);
                high = glm::max(high, *at);
            }
            CAPTURE(picture.name);
            CHECK(low.x >= 0);
            CHECK(low.y >= 0);
            CHECK(high.x <= viewport.width);
            CHECK(high.y <= viewport.height);
            const glm::vec2 share = (high - low) / glm::vec2(viewport.width, viewport.height);
            CHECK(std::max(share.x, share.y) > 0.85F);
        }
    }
}
