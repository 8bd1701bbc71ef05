#include <algorithm>

#include "document/edit.hpp"
#include "document/history.hpp"
#include "document/setup_file.hpp"
#include "document/tour.hpp"
#include "parts/spacer.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::string setup_text() { return write_setup(new_document()); }

const std::string club_tour = R"(
# for the night in May
[[tour]]
name = "club-night"
title = "For the club"
colour = "blue"

[[tour.step]]
view = "rear"
caption = "The image falls {focus.shortfall}; {{ is a brace."
notes = """
Wait here.
Ask who knows."""

[[tour.step]]
camera = { target_mm = [1.5, -20, 700], distance_mm = 320, yaw_deg = 40, pitch_deg = -12.25 } # close
caption = "Here it divides."
)";

Error error_of(const std::string& tour) {
    const auto read = read_setup(setup_text() + tour, "talk.train.toml");
    REQUIRE_FALSE(read);
    return read.error();
}

int line_in(const std::string& text, const std::string& words) {
    const auto place = text.find(words);
    REQUIRE(place != std::string::npos);
    return static_cast<int>(
               std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(place), '\n'))
           + 1;
}

// The text must be refused at the line that holds `words`.
void refused_at(const std::string& tour, const std::string& words, const std::string& sentence) {
    const Error error = error_of(tour);
    CAPTURE(error.what);
    CHECK(error.where.file == "talk.train.toml");
    CHECK(error.where.line == line_in(setup_text() + tour, words));
    CHECK(error.what.find(sentence) != std::string::npos);
}

}  // namespace

TEST_CASE("a tour in a file is read, and written back with its comments and foreign keys") {
    const auto read = read_setup(setup_text() + club_tour, "talk");
    REQUIRE(read);
    REQUIRE(read->document.tours.size() == 1);
    const Tour& tour = read->document.tours.front();
    CHECK(tour.name == "club-night");
    CHECK(tour.title == "For the club");
    REQUIRE(tour.steps.size() == 2);
    CHECK(tour.steps[0].view == StandardView::rear);
    CHECK(tour.steps[0].notes == "Wait here.\nAsk who knows.");
    CHECK(tour.steps[1].camera == TourCamera{{1.5, -20, 700}, 320, 40, -12.25});
    REQUIRE(read->notices.size() == 1);
    CHECK(read->notices.front().text.find("'colour'") != std::string::npos);
    const std::string written = write_setup(read->document);
    CHECK(written.find("# for the night in May\n[[tour]]") != std::string::npos);
    CHECK(written.find("colour = \"blue\"") != std::string::npos);
    CHECK(written.find("}  # close") != std::string::npos);
    const auto again = read_setup(written, "talk");
    REQUIRE(again);
    CHECK(again->document == read->document);
}

TEST_CASE("a mistake in a tour is told with its line and the nearest known name") {
    const std::string head = "[[tour]]\nname = \"a\"\n";
    refused_at(head + "[[tour.step]]\ncaption = \"It is {focus.shortfal}.\"\n", "focus.shortfal}",
               "did you mean '{focus.shortfall}'?");
    refused_at(head + "[[tour.step]]\ncaption = \"It is {focus\"\n", "It is {focus",
               "without its '}'");
    refused_at(head + "[[tour.step]]\nview = \"raer\"\n", "raer", "did you mean 'rear'?");
    refused_at(head + "[[tour.step]]\nview = 3\n", "view = 3", "must be a text in quotes");
    refused_at(head + "[[tour.step]]\ncamera = { distance_mm = 1 }\n",
               "camera =", "from 4 to 30000");
    refused_at("[[tour]]\nname = \"Two words\"\n", "Two words", "one word");
    refused_at(head, "[[tour]]", "has no step");
    const Error twice = error_of(head + "[[tour.step]]\n" + head + "[[tour.step]]\n");
    CHECK(twice.what.find("two tours called 'a'") != std::string::npos);
    CHECK(twice.where.line
          == line_in(setup_text(), "[chosen]") + 7);  // [chosen] and its 3, 3 of the first
}

TEST_CASE("a mistyped key of a step is kept and told with the nearest known one") {
    const auto read = read_setup(
        setup_text() + "[[tour]]\nname = \"a\"\n[[tour.step]]\ncaptoin = \"Hello\"\n", "talk");
    REQUIRE(read);
    REQUIRE(read->notices.size() == 1);
    CHECK(read->notices.front().text.find("did you mean 'caption'?") != std::string::npos);
    CHECK(write_setup(read->document).find("captoin = \"Hello\"") != std::string::npos);
}

TEST_CASE("tours are changed through the one door, and the change is undone") {
    History history(new_document());
    const Tour tour{"a", "A", {{StandardView::side, "Now {eye.left}", ""}}};
    const SetTours wanted{{tour}, "Add a tour"};
    const auto changed = apply(*history.document(), wanted);
    REQUIRE(changed);
    CHECK(changed->tours == std::vector<Tour>{tour});
    history.commit(*changed, describe(wanted, *history.document()));
    CHECK(history.undo_label() == "Add a tour");
    history.undo();
    CHECK(history.document()->tours.empty());
    for (const Tour& wrong : {Tour{"a", "A", {{StandardView::side, "{eye.lift}", ""}}},
                              Tour{"a", "A", {}}, Tour{"A b", "A", tour.steps}})
        CHECK_FALSE(apply(new_document(), SetTours{{wrong}, "x"}));
    CHECK_FALSE(apply(new_document(), SetTours{{tour, tour}, "x"}));
}

TEST_CASE("a free name is one word, unlike the others'") {
    const std::vector<Tour> tours{{"club-night", "", {}}, {"club-night-2", "", {}}};
    CHECK(free_tour_name(tours, "Club night!") == "club-night-3");
    CHECK(free_tour_name(tours, "Why it will") == "why-it-will");
    CHECK(free_tour_name(tours, "???") == "tour");
    CHECK_FALSE(tour_name_objection(free_tour_name(tours, "Où est l'œil ?")));
}

TEST_CASE("what a step lights and asks is read, and written back as it was") {
    const std::string text = setup_text() + R"(
[[tour]]
name = "ask"
[[tour.step]]
view = "eyes"
lit = ["splitter_head", "telescope", "part: )"
                             + new_document().setup.parts[0].name + R"("] # these
question = "Which eye gets more light?"
answers = ["The left eye", "The right eye", "Both alike"]
right = "{eye.brighter}"
caption = "{eye.left} against {eye.right}."
[[tour.step]]
question = "Is it {head.path}?"
answers = ["Yes", "No"] # two
right = 2
)";
    const auto read = read_setup(text, "talk");
    REQUIRE_MESSAGE(read.has_value(), (read ? "" : to_text(read.error())));
    CHECK(read->notices.empty());
    const auto& steps = read->document.tours.at(0).steps;
    REQUIRE(steps.size() == 2);
    CHECK(steps[0].lit.size() == 3);
    REQUIRE(steps[0].asks);
    CHECK(steps[0].asks->right_value == "{eye.brighter}");
    REQUIRE(steps[1].asks);
    CHECK(steps[1].asks->answers == std::vector<std::string>{"Yes", "No"});
    CHECK(steps[1].asks->right == 1);
    const std::string written = write_setup(read->document);
    CHECK(written.find("\"]  # these") != std::string::npos);
    CHECK(written.find("]  # two") != std::string::npos);
    const auto again = read_setup(written, "talk");
    REQUIRE(again);
    CHECK(again->document == read->document);
}

TEST_CASE("a mistake in what is lit or asked is told with its line and what was expected") {
    const std::string head = "[[tour]]\nname = \"a\"\n[[tour.step]]\n";
    refused_at(head + "lit = \"shifter\"\n", "lit =", "must be a list");
    refused_at(head + "lit = [\"spliter_head\"]\n", "lit =", "did you mean 'splitter_head'?");
    refused_at(head + "lit = [\n\"telescope\",\n\"part: Nobody\"]\n", "part: Nobody",
               "no part is called 'Nobody'");
    refused_at(head + "lit = [\"observer\"]\n", "lit =", "cannot be lit");
    refused_at(head + "lit = [\"chain\", \"chain\"]\n", "lit =", "lit twice");
    const std::string asks = head + "question = \"Why?\"\n";
    refused_at(asks, "question =", "answers = [");
    refused_at(head + "right = 1\n", "right =", "question = ");
    refused_at(asks + "answers = [\"Yes\", \"No\"]\n", "question =", "right = 1");
    refused_at(asks + "answers = [\"Yes\"]\nright = 1\n", "answers =", "two or three");
    refused_at(asks + "answers = [\"Yes\", \"Yes\"]\nright = 1\n", "answers =", "alike");
    refused_at(asks + "answers = [\"Yes\", \"\"]\nright = 1\n", "answers =", "must not be empty");
    refused_at(asks + "answers = [\"{eye.lift}\", \"No\"]\nright = 1\n",
               "answers =", "did you mean '{eye.left}'?");
    refused_at(asks + "answers = [\"Yes\", \"No\"]\nright = 3\n", "right =", "from 1 to 2");
    refused_at(asks + "answers = [\"Yes\", \"No\"]\nright = 0\n", "right =", "from 1");
    refused_at(asks + "answers = [\"Yes\", \"No\"]\nright = \"Perhaps\"\n",
               "right =", "none of the answers");
    refused_at(asks + "answers = [\"Yes\", \"No\"]\nright = \"{focus.verdct}\"\n",
               "right =", "did you mean '{focus.verdict}'?");
}

TEST_CASE("what is lit follows its part's name, and goes when the part goes") {
    Document document = new_document();
    const auto added = apply(document, AddPart{"spacer", {}});
    REQUIRE(added);
    document = *added;
    std::size_t spacer = 0;
    while (!document.setup.parts.at(spacer).body.is<Spacer>())
        ++spacer;
    const std::string name = document.setup.parts[spacer].name;
    TourStep step;
    step.lit = {"part: " + name, "splitter_head"};
    const auto toured = apply(document, SetTours{{Tour{"a", "A", {step}}}, "x"});
    REQUIRE(toured);
    const auto renamed = apply(*toured, RenamePart{spacer, "Long tube"});
    REQUIRE(renamed);
    CHECK(renamed->tours[0].steps[0].lit
          == std::vector<std::string>{"part: Long tube", "splitter_head"});
    const auto read = read_setup(write_setup(*renamed), "talk");
    REQUIRE(read);
    CHECK(read->document.tours == renamed->tours);
    const auto removed = apply(*renamed, RemovePart{spacer});
    REQUIRE(removed);
    CHECK(removed->tours[0].steps[0].lit == std::vector<std::string>{"splitter_head"});
    CHECK(read_setup(write_setup(*removed), "talk").has_value());
    const auto replaced = apply(*renamed, ReplaceSetup{removed->setup, "x"});
    REQUIRE(replaced);
    CHECK(replaced->tours[0].steps[0].lit == std::vector<std::string>{"splitter_head"});
    CHECK_FALSE(apply(*removed, SetTours{renamed->tours, "x"}));
}

TEST_CASE("a tour is found by its name, and by its title in any letters") {
    const std::vector<Tour> tours{{"club-night", "For the Club", {}}, {"other", "Other", {}}};
    CHECK((*find_tour(tours, "club-night"))->name == "club-night");
    CHECK((*find_tour(tours, "for the club"))->name == "club-night");
    const auto none = find_tour(tours, "For the clup");
    REQUIRE_FALSE(none);
    CHECK(none.error().what.find("did you mean 'For the Club'?") != std::string::npos);
}

TEST_CASE("what a step shows is read and written, and a word that there is not is told") {
    const std::string head = "[[tour]]\nname = \"a\"\n[[tour.step]]\n";
    const auto read = read_setup(
        setup_text() + head + "show = [\"pupil\", \"motion\"]  # both\ncaption = \"Hello\"\n",
        "talk");
    REQUIRE(read);
    CHECK(read->notices.empty());
    const TourStep& step = read->document.tours.front().steps.front();
    CHECK((step.show == std::set{TourShow::motion, TourShow::pupil}));
    const std::string written = write_setup(read->document);
    CHECK(written.find("show = [\"motion\", \"pupil\"]  # both") != std::string::npos);
    CHECK(read_setup(written, "talk")->document == read->document);
    CHECK(write_setup(new_document()).find("show") == std::string::npos);
    refused_at(head + "show = [\"motoin\"]\n", "motoin", "did you mean 'motion'?");
    refused_at(head + "show = \"motion\"\n", "show =", "a list of words");
    refused_at(head + "show = [3]\n", "show =", "a list of words");
}
