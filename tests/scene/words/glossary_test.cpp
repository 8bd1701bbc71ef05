// The words of the trade: that they are found, and that what stands on screen is explained.
#include <algorithm>
#include <cctype>
#include <set>
#include <string>

#include "parts/part.hpp"
#include "scene/light/magnification_rows.hpp"
#include "scene/sample_setups.hpp"
#include "scene/words/glossary.hpp"
#include "study/findings/report.hpp"
#include "study/tune/tune.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::string in_small_letters(std::string_view words) {
    std::string small(words);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](unsigned char letter) { return std::tolower(letter); });
    return small;
}

}  // namespace

TEST_CASE("terms stand in the order of the alphabet, each once, each a sentence or two") {
    const auto terms = glossary();
    for (std::size_t i = 0; i < terms.size(); ++i) {
        INFO(terms[i].word);
        if (i > 0) CHECK(in_small_letters(terms[i - 1].word) < in_small_letters(terms[i].word));
        CHECK(terms[i].meaning.ends_with('.'));
        CHECK(terms[i].meaning.size() > 30);
        CHECK(terms[i].meaning.size() < 230);
    }
}

TEST_CASE("no name leads to two terms") {
    std::set<std::string> names;
    for (const Term& term : glossary()) {
        std::string all(term.word);
        if (!term.also.empty()) all += ", " + std::string(term.also);
        for (std::size_t at = 0; at < all.size();) {
            const std::size_t end = std::min(all.find(", ", at), all.size());
            const std::string name = all.substr(at, end - at);
            CAPTURE(name);
            CHECK(names.insert(in_small_letters(name)).second);
            CHECK(term_in(name) == &term);
            at = end + 2;
        }
    }
}

TEST_CASE("what a label speaks of is found as whole words, the longest first") {
    const auto word = [](std::string_view label) {
        const Term* term = term_in(label);
        return term != nullptr ? std::string(term->word) : "";
    };
    CHECK(word("Stated light path") == "light path");
    CHECK(word("Effective focal length") == "effective focal length");
    CHECK(word("Eyepieces") == "eyepiece pair");
    CHECK(word("Fitness").empty());  // no "fit"
    CHECK(word("").empty());
}

TEST_CASE("a word is found by letters of its names, then by what is said of it") {
    CHECK(matching_terms("").size() == glossary().size());
    REQUIRE_FALSE(matching_terms("back fo").empty());
    CHECK(matching_terms("back fo").front()->word == "back focus");
    REQUIRE_FALSE(matching_terms("vignetting").empty());
    CHECK(matching_terms("vignetting").front()->word == "clipping");
    const auto of_spectacles = matching_terms("spectacles");
    CHECK(std::any_of(of_spectacles.begin(), of_spectacles.end(),
                      [](const Term* term) { return term->word == "eye relief"; }));
    CHECK(matching_terms("zzzz").empty());
}

TEST_CASE("every kind of part and every result that is told as a number is explained") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.label);
        CHECK((term_in(kind.label) != nullptr));
    }
    const Setup setup = short_setup();
    const auto report = make_report(setup, setup.chosen, ClippingEffort{16});
    REQUIRE(report.has_value());
    for (const ValueRow& row : magnification_rows(*report)) {
        CAPTURE(row.label);
        const Term* term = term_in(row.label);
        REQUIRE((term != nullptr));
        CHECK(term->unit == row.unit);
    }
}

TEST_CASE("every number of a part is explained, but for everyday words") {
    const std::set<std::string> everyday{
        "Name",         "Length",        "Thickness", "Outer diameter", "Distance",
        "Tube opening", "Tube in front", "Turned",    "Left eye",       "Right eye"};
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            if (field.type != FieldType::number || everyday.contains(field.label)) continue;
            CAPTURE(kind.key);
            CAPTURE(field.label);
            CHECK((term_in(field.label) != nullptr));
        }
    }
}
