#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_frame.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

AskedQuestion asked_in(const Setup& setup, const std::string& tour, const std::string& begins) {
    const Report report = report_of(setup);
    const auto quotes = tour_quotes(setup, report);
    const auto tours = built_in_tours(setup, report);
    const auto found = find_tour(tours, tour);
    REQUIRE(found);
    for (const TourStep& step : (*found)->steps) {
        if (!step.asks || !step.asks->question.starts_with(begins)) continue;
        auto asked = asked_question(*step.asks, quotes);
        REQUIRE(asked);
        return *std::move(asked);
    }
    FAIL("not asked: " << begins);
    return {};
}

std::string right_words(const AskedQuestion& asked) {
    REQUIRE(asked.right);
    return asked.answers.at(*asked.right);
}

}  // namespace

TEST_CASE("the right answer is the one that says the same, or the nearest number of its unit") {
    const std::vector<std::string> yes_no{"Yes", "No"};
    CHECK(right_answer(yes_no, "No") == 1);
    CHECK(right_answer(yes_no, "Perhaps") == std::nullopt);
    const std::vector<std::string> lengths{"10 mm", "50 mm", "110 mm"};
    CHECK(right_answer(lengths, "102.3\u00A0mm") == 2);
    CHECK(right_answer(lengths, "50 mm") == 1);
    CHECK(right_answer(lengths, "11.0 mm") == 0);
    // 80 lies 30 from either neighbour, more than a quarter of it; 400 is far off.
    CHECK(right_answer(lengths, "80 mm") == std::nullopt);
    CHECK(right_answer(lengths, "400 mm") == std::nullopt);
    CHECK(right_answer(lengths, "50 %") == std::nullopt);
    CHECK(right_answer(std::vector<std::string>{"10 mm", "All of it"}, "10.4 mm") == std::nullopt);
}

TEST_CASE("whether it comes to focus is answered by the budget of each setup") {
    const std::string tour = "why-it-will-not-focus";
    CHECK(right_words(asked_in(cured_setup(), tour, "Will it")) == "Yes");
    CHECK(right_words(asked_in(short_setup(), tour, "Will it")) == "No, it falls short");
    Setup far = short_setup();
    far.parts[0].body.get<Refractor>().back_focus = {400};  // far beyond chain and travel
    CHECK(right_words(asked_in(far, tour, "Will it")) == "No, it falls too far");
}

TEST_CASE("a drawtube that is held is not asked whether it goes to focus") {
    const Setup setup = short_setup();
    Report held = report_of(setup);
    held.budget.is_held = true;
    for (const Tour& tour : built_in_tours(setup, held)) {
        for (const TourStep& step : tour.steps)
            CHECK_FALSE((step.asks && step.asks->question.starts_with("Will it")));
    }
}

TEST_CASE("which eye gets more light follows the splitter's shares, whichever side is dimmer") {
    Setup setup = short_setup();
    const auto right_with = [&](double reflects) {
        for (Part& part : setup.parts) {
            auto* head = part.body.as<SplitterHead>();
            if (head == nullptr) continue;
            const auto changed = with_field(part.body, "reflected_percent", FieldValue{reflects});
            REQUIRE_MESSAGE(changed.has_value(), (changed ? "" : changed.error().what));
            part.body = *changed;
        }
        return right_words(asked_in(setup, "one-beam-becomes-two", "Which eye"));
    };
    // The reflected share goes to the left eye (splitter_head.hpp); 30 against 70 is more than any other loss.
    CHECK(right_with(30) == "The right eye");
    CHECK(right_with(70) == "The left eye");
}

TEST_CASE("every question of every tour has one right answer on every sample, its numbers rising") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Report report = report_of(setup);
        const auto quotes = tour_quotes(setup, report);
        int asked_count = 0;
        for (const Tour& tour : built_in_tours(setup, report)) {
            for (std::size_t i = 0; i < tour.steps.size(); ++i) {
                if (tour.steps[i].asks) CHECK_FALSE(question_fault(*tour.steps[i].asks));
                const auto shown =
                    tour_frame({&tour, 1}, tour.name, static_cast<int>(i) + 1, quotes);
                REQUIRE(shown);
                if (!shown->asked) continue;
                ++asked_count;
                CAPTURE(shown->asked->question);
                CHECK(shown->asked->right.has_value());
                CHECK(shown->asked->answers.size() == 3);
                // The answer is told as the caption tells it, to the last digit.
                if (!shown->asked->truth.empty())
                    CHECK(right_words(*shown->asked) == shown->asked->truth);
            }
        }
        CHECK(asked_count >= 3);
    }
}

TEST_CASE("a question that was right once says so where no answer is right any more") {
    const TourQuestion asks{"How long?", {"10 mm", "20 mm"}, 0, "{head.path}"};
    const Tour tour{"a", "A", {{StandardView::rear, "So it is.", "", {}, {}, {}, {}, asks}}};
    const std::vector<TourQuote> quotes{{"head.path", "300.0\u00A0mm", ""}};
    const auto shown = tour_frame({&tour, 1}, "a", 1, quotes);
    REQUIRE(shown);
    CHECK_FALSE(shown->asked->right);
    CHECK(shown->caption == "None of these: 300.0\u00A0mm. So it is.");
}
