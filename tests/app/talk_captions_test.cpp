// What is read in a talk fits the screen: every built-in tour on every shipped demo.
#include "app/open_setup.hpp"
#include "scene/built_in_tours.hpp"
#include "scene/tour_frame.hpp"
#include "ui/talk_overlay.hpp"
#include "ui/theme.hpp"

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

}  // namespace

TEST_CASE("no caption of any tour on any demo leaves its band at 1280 x 720") {
    const Letters letters(talk_scale(720));
    const TalkLayout layout = talk_layout(1280, 720);
    const float room = layout.band_height - layout.margin;
    // A text that is too long is noticed.
    CHECK(caption_height({"", std::string(900, 'm'), 1, 1}, layout) > room);
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
                const TalkWords words{shown->title, shown->caption, shown->step, shown->steps};
                CHECK(caption_height(words, layout) <= room);
            }
        }
    }
}
