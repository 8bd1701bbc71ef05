#include <algorithm>

#include "document/document.hpp"
#include "document/edit.hpp"
#include "document/tour_lit.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// Of the roles of a new setup's parts, in their order; a spacer stands in its chain.
Setup setup_with_spacer() {
    const auto added = apply(new_document(), AddPart{"spacer", {}});
    REQUIRE(added);
    return added->setup;
}

std::size_t first_with(const Setup& setup, Role role) { return parts_with_role(setup, role).at(0); }

}  // namespace

TEST_CASE("a step lights parts by kind, by place in the train and by name") {
    const Setup setup = setup_with_spacer();
    const auto lights = [&](std::vector<std::string> words, Role role) {
        return static_cast<bool>(lit_parts(words, setup).at(first_with(setup, role)));
    };
    CHECK(lights({"telescope"}, Role::telescope));
    CHECK_FALSE(lights({"telescope"}, Role::focuser));
    CHECK(lights({"chain"}, Role::chain));
    CHECK_FALSE(lights({"chain"}, Role::splitter));
    CHECK(lights({"splitter_head"}, Role::splitter));
    const std::string name = setup.parts.at(first_with(setup, Role::focuser)).name;
    CHECK(lights({"part: " + name}, Role::focuser));
    CHECK(lights({"part:" + name, "chain"}, Role::chain));
    CHECK_FALSE(lights({"part: " + name}, Role::chain));
}

TEST_CASE(
    "where nothing of what is to be lit is there, everything is lit and nothing lies in the dark") {
    const Setup setup = new_document().setup;
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{}, std::vector<std::string>{"coma_corrector"},
          std::vector<std::string>{"part: Nobody"}}) {
        const auto lights = lit_parts(words, setup);
        CHECK(std::find(lights.begin(), lights.end(), false) == lights.end());
    }
}

TEST_CASE("one part is taken out of what a word lights, and put back") {
    const Setup setup = setup_with_spacer();
    const auto choices = parts_in_light(setup, setup.chosen);
    const std::vector<std::string> before{"telescope", "splitter_head"};
    const std::size_t head = first_with(setup, Role::splitter);
    const std::size_t focuser = first_with(setup, Role::focuser);
    const auto more = with_part_lit(before, setup, choices, focuser, true);
    CHECK(more
          == std::vector<std::string>{"telescope", "splitter_head",
                                      lit_word_of(setup.parts[focuser])});
    const auto less = with_part_lit(more, setup, choices, head, false);
    CHECK(less == std::vector<std::string>{"telescope", lit_word_of(setup.parts[focuser])});
    // Ticked part by part until all are: that is everything, without words.
    std::vector<std::string> all = before;
    for (const std::size_t part : choices)
        all = with_part_lit(all, setup, choices, part, true);
    CHECK(all.empty());
}
