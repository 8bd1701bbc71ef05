// What is read in a talk fits the screen: every built-in tour on every shipped demo.
#include "desk/open_setup.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_frame.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/talk/talk_overlay.hpp"

#include <doctest/doctest.h>
#include <imgui.h>

using namespace beamfork;

namespace {

// Letters that can be measured, with nothing to draw on.
class Letters {
public:
    explicit Letters(float scale) : context_(ImGui::CreateContext()) {
        ImGui::SetCurrentContext(context_);
        set_theme(scale);
        ImGui::GetIO().Fonts->Build();
    }
    ~Letters() { ImGui::DestroyContext(context_); }
    Letters(const Letters&) = delete;
    Letters& operator=(const Letters&) = delete;
    Letters(Letters&&) = delete;
    Letters& operator=(Letters&&) = delete;

private:
    ImGuiContext* context_;
};

// In letters of the full size.
void check_full_size(const std::string& words,
                     float width,
                     float height,
                     const TalkLayout& layout) {
    const FittedWords fit =
        fitted(words, {width, 1e6F}, *font(TextFace::large), layout.caption_size);
    CHECK(fit.height <= height);
}

}  // namespace

TEST_CASE("no words of any tour on any demo leave their band at 1280 x 720, and hardly any is made "
          "smaller") {
    const Letters letters(talk_scale(720));
    const TalkLayout layout = talk_layout(1280, 720);
    for (const Demo& demo : demos()) {
        const auto read = open_named(demo.name);
        REQUIRE(read);
        const Setup& setup = read->document.setup;
        const auto report = make_report(setup, setup.chosen, {100});
        REQUIRE(report);
        const auto quotes = tour_quotes(setup, *report);
        const auto tours = built_in_tours(setup, *report);
        for (const Tour& tour : tours) {
            for (std::size_t i = 0; i < tour.steps.size(); ++i) {
                const auto shown = tour_frame(tours, tour.name, static_cast<int>(i) + 1, quotes);
                REQUIRE(shown);
                CAPTURE(demo.name);
                CAPTURE(shown->caption);
                const TalkWords words = talk_words(*shown);
                CHECK(caption_height(words, layout) <= caption_room(layout));
                check_full_size(words.caption, layout.caption_width, caption_room(layout), layout);
                if (!words.asked) continue;
                const Area question = question_area(layout);
                check_full_size(words.asked->question, question.width, question.height, layout);
            }
        }
    }
}

TEST_CASE("the longest caption in the widest letters stays in its band and within its margins") {
    for (const ImVec2 screen : {ImVec2{1280, 720}, ImVec2{1920, 1080}, ImVec2{640, 360}}) {
        const Letters letters(talk_scale(screen.y));
        const TalkLayout layout = talk_layout(screen.x, screen.y);
        ImFont& face = *font(TextFace::large);
        std::string words;
        while (words.size() < 400)
            words += words.size() % 8 == 7 ? ' ' : 'W';
        for (const std::string& caption : {std::string(400, 'W'), words}) {
            CHECK_FALSE(caption_objection(caption));
            CHECK(caption_height({"", caption, 1, 1}, layout) <= caption_room(layout));
            const FittedWords fit = fitted(caption, {layout.caption_width, caption_room(layout)},
                                           face, layout.caption_size);
            CHECK(face.CalcTextSizeA(fit.size, 1e9F, 0, fit.lines.c_str()).x
                  <= layout.caption_width);
            // Nothing is lost by the folding.
            std::string letters_left = fit.lines;
            std::erase(letters_left, '\n');
            std::erase(letters_left, ' ');
            std::string letters_given = caption;
            std::erase(letters_given, ' ');
            CHECK(letters_left == letters_given);
        }
    }
}

TEST_CASE("a number keeps its unit in its line, however narrow the lines are") {
    const Letters letters(1);
    ImFont& face = *font(TextFace::large);
    const std::string caption = "It is {a} and takes {b} of the light, or 12.5 mm by hand.";
    const std::vector<TourQuote> quotes{{"a", "110.0\u00A0mm", ""}, {"b", "31\u00A0%", ""}};
    const auto filled = filled_caption(caption, quotes);
    REQUIRE(filled);
    for (float width = 120; width < 700; width += 7) {
        const std::string lines = folded(*filled, width, face, 20);
        CAPTURE(lines);
        for (const char* kept : {"110.0\u00A0mm", "31\u00A0%", "12.5 mm"})
            CHECK(lines.find(kept) != std::string::npos);
    }
}
