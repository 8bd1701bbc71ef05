#include "ui/desk.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/picture/word_glide.hpp"

using namespace beamfork;

namespace {

std::map<std::string, glm::vec2> words_of(Desk& desk) {
    return desk.transient.state().of_document.flight.words.places();
}

float farthest_move(const std::map<std::string, glm::vec2>& before,
                    const std::map<std::string, glm::vec2>& after) {
    float farthest = 0;
    for (const auto& [words, at] : before) {
        const auto found = after.find(words);
        if (found != after.end()) farthest = std::max(farthest, glm::distance(at, found->second));
    }
    return farthest;
}

}  // namespace

TEST_CASE("no name moves when parts are selected or pointed at, in the list or in the picture") {
    constexpr float a_few_px = 3;
    for (const ImVec2 size : {ImVec2{1280, 720}, ImVec2{1600, 1000}, ImVec2{1920, 1080}}) {
        Desk desk(clipping_setup(), size);
        desk.frame(60);
        const auto before = words_of(desk);
        REQUIRE(before.size() >= 3);
        for (const std::string row : {"train/0", "train/3", "train/4", "train/5"}) {
            if (!desk.has(row)) continue;
            desk.click(row);
            desk.frame(60);
            CAPTURE(row);
            CHECK(words_of(desk).size() == before.size());
            CHECK(farthest_move(before, words_of(desk)) < a_few_px);
        }
        desk.move(desk.place("picture/canvas", 0.5F, 0.5F));
        desk.press();
        desk.release();
        desk.frame(60);
        CHECK(farthest_move(before, words_of(desk)) < a_few_px);
    }
}

TEST_CASE("names glide after the picture and come to rest") {
    WordGlide glide;
    const Viewport viewport{900, 600};
    const float step = 1 / 60.0F;
    glide.begin(viewport, step);
    CHECK(glide.place("head", {100, 100}) == glm::vec2{100, 100});  // there at once
    glide.end();
    float last = 100;
    int frames = 0;
    do {
        glide.begin(viewport, step);
        const float now = glide.place("head", {400, 100}).x;
        glide.end();
        CHECK(now > last);
        CHECK(now - last < 100);  // no jump
        last = now;
        ++frames;
    } while (glide.moves() && frames < 200);
    CHECK(last == 400);
    CHECK(frames > 10);
    CHECK(frames < 60);  // within a second
    glide.begin({500, 600}, step);
    CHECK(glide.place("head", {200, 100}) == glm::vec2{200, 100});  // a picture of another size
}
