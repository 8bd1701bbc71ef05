#include <algorithm>

#include "study/focus/combinations.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The shortest setup with so many of each.
Setup crowd(std::size_t eyepieces, std::size_t observers, std::size_t targets) {
    Setup setup;
    const auto add = [&](Role role, std::size_t count) {
        for (const PartKind& kind : part_kinds()) {
            if (kind.role != role) continue;
            for (std::size_t i = 0; i < count; ++i)
                setup.parts.push_back({kind.label + " " + std::to_string(i), kind.fresh, {}});
            return;
        }
    };
    add(Role::telescope, 1);
    add(Role::focuser, 1);
    add(Role::splitter, 1);
    add(Role::eyepiece, eyepieces);
    add(Role::observer, observers);
    add(Role::target, targets);
    return with_valid_choice(std::move(setup));
}

}  // namespace

TEST_CASE("every eyepiece pair is studied with every observer and target as long as that takes no "
          "more than seconds") {
    const Setup setup = crowd(5, 8, 5);
    const Combinations all = combinations(setup, setup.chosen);
    CHECK(all.studied.size() == 200);
    CHECK(all.left_out.empty());
    CHECK(left_out_sentence(setup, all.left_out).empty());
}

TEST_CASE("of more than 200 combinations those with the chosen parts stay, and each part left out "
          "is named") {
    Setup setup = crowd(3, 40, 2);
    const auto observers = parts_with_role(setup, Role::observer);
    setup.chosen.observer = observers.back();
    const Combinations all = combinations(setup, setup.chosen);
    CHECK(all.studied.size() == 198);  // 3 × 33 × 2
    CHECK(std::count(all.studied.begin(), all.studied.end(), setup.chosen) == 1);
    CHECK(all.left_out == std::vector<std::size_t>(observers.begin() + 32, observers.end() - 1));
    const std::string sentence = left_out_sentence(setup, all.left_out);
    CHECK(sentence.find("“Observer 32”, “Observer 33”") != std::string::npos);
    CHECK(sentence.find("and 2 more") != std::string::npos);
    // 40 of each: 5 × 6 × 6 = 180, the last step of which left 6 × 6 × 6 = 216 behind.
    const Setup full = crowd(40, 40, 40);
    CHECK(combinations(full, full.chosen).studied.size() == 180);
}
