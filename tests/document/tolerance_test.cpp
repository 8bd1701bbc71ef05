// How well values are known: read, written, changed, undone.
#include "document/sample.hpp"
#include "document/setup_file.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

const std::string stated = with(smallest_file,
                                "back_focus_mm = 116\n",
                                "back_focus_mm = 116\n# by a paper screen\nplus_minus = { "
                                "back_focus_mm = [2, \"measured\"], aperture_mm = [0.5, "
                                "\"datasheet\"] }  # twice\n");

ReadSetup read_text(const std::string& text) {
    auto result = read_setup(text, "file");
    if (!result) FAIL(to_text(result.error()));
    return std::move(*result);
}

std::string refusal_of(const std::string& text) {
    const auto result = read_setup(text, "file");
    REQUIRE_FALSE(result.has_value());
    return to_text(result.error());
}

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a stated plus or minus is read with its kind") {
    const ReadSetup setup = read_text(stated);
    CHECK(setup.notices.empty());
    const auto& tolerances = setup.document.setup.parts[0].tolerances;
    REQUIRE(tolerances.size() == 2);
    CHECK(tolerances.at("back_focus_mm") == Tolerance{2, KnownBy::measured});
    CHECK(tolerances.at("aperture_mm") == Tolerance{0.5, KnownBy::datasheet});
}

TEST_CASE("it survives a save, with the comments at it") {
    const Document document = read_text(stated).document;
    const std::string text = write_setup(document);
    CHECK(holds(text, "# by a paper screen\nplus_minus = { "));
    CHECK(holds(text, "}  # twice\n"));
    CHECK(read_text(text).document == document);
}

TEST_CASE("a heading of its own says the same") {
    const std::string text = with(smallest_file, "[[part]]\nkind = \"focuser\"",
                                  "[part.plus_minus]\nback_focus_mm = [2, \"measured\"]\n\n"
                                  "[[part]]\nkind = \"focuser\"");
    const auto tolerances = read_text(text).document.setup.parts[0].tolerances;
    REQUIRE(tolerances.contains("back_focus_mm"));
    CHECK(tolerances.at("back_focus_mm") == Tolerance{2, KnownBy::measured});
}

TEST_CASE("a key that the part does not have is told with the nearest one, and kept") {
    const ReadSetup setup = read_text(with(stated, "aperture_mm = [0.5", "back_focs_mm = [0.5"));
    REQUIRE(setup.notices.size() == 1);
    CHECK(holds(setup.notices[0].text, "back_focs_mm"));
    CHECK(holds(setup.notices[0].text, "did you mean 'back_focus_mm'"));
    const std::string text = write_setup(setup.document);
    CHECK(holds(text, "back_focs_mm = [0.5, \"datasheet\"]"));
    CHECK(read_text(text).document == setup.document);
}

TEST_CASE("what is no plus or minus is refused with its line") {
    CHECK(
        holds(refusal_of(with(stated, "[2, \"measured\"]", "[-2, \"measured\"]")), "more than 0"));
    CHECK(holds(refusal_of(with(stated, "[2, \"measured\"]", "[2, \"dreamt\"]")), "guessed"));
    CHECK(holds(refusal_of(with(stated, "[2, \"measured\"]", "2")), "like [0.5"));
    CHECK(holds(refusal_of(with(stated, "[2, \"measured\"]", "2")), "file:"));
    CHECK(holds(refusal_of(with(stated, "[2, \"measured\"]", "\"dreamt\"")), "guessed"));
}

TEST_CASE("how a length is known can be said without a number, and is kept so") {
    const Document document = read_text(with(stated, "[2, \"measured\"]", "\"guessed\"")).document;
    const auto& tolerances = document.setup.parts[0].tolerances;
    CHECK(tolerances.at("back_focus_mm") == Tolerance{std::nullopt, KnownBy::guessed});
    CHECK(holds(write_setup(document), "back_focus_mm = \"guessed\""));
    CHECK(read_text(write_setup(document)).document == document);
}

TEST_CASE("stating a plus or minus and taking it away are edits; nonsense is refused") {
    const Document before = new_document();
    const SetTolerance set{0, "back_focus_mm", Tolerance{1.5, KnownBy::guessed}};
    auto changed = apply(before, set);
    REQUIRE(changed.has_value());
    CHECK(changed->setup.parts[0].tolerances.at("back_focus_mm") == *set.tolerance);
    CHECK(holds(describe(set, before), "±"));
    auto cleared = apply(*changed, SetTolerance{0, "back_focus_mm", std::nullopt});
    REQUIRE(cleared.has_value());
    CHECK(*cleared == before);
    CHECK_FALSE(
        apply(before, SetTolerance{0, "no_such", Tolerance{1, KnownBy::guessed}}).has_value());
    CHECK_FALSE(apply(before, SetTolerance{0, "back_focus_mm", Tolerance{0, KnownBy::guessed}})
                    .has_value());
    CHECK_FALSE(apply(before, SetTolerance{99, "back_focus_mm", std::nullopt}).has_value());
}
