#include <algorithm>

#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "support/setups.hpp"
#include "train/setup.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Setup without(Setup setup, std::size_t index) {
    setup.parts.erase(setup.parts.begin() + static_cast<std::ptrdiff_t>(index));
    return setup;
}

}  // namespace

TEST_CASE("a setup in the order of the light has no fault, whatever its chain") {
    CHECK_FALSE(order_fault(plain_setup()).has_value());
    CHECK_FALSE(order_fault(
        plain_setup({{"Diagonal", PrismDiagonal{}, {}}, {"Filter", FilterPlate{}, {}}})));
    Setup many = plain_setup();
    many.parts.insert(many.parts.end() - 2, {"More eyepieces", EyepiecePair{}, {}});
    many.parts.push_back({"Tower", Target{Metres{800}}, {}});
    CHECK_FALSE(order_fault(many).has_value());
}

TEST_CASE("a setup that lacks a part says which") {
    const Setup whole = plain_setup();
    const auto fault_without = [&](std::size_t index) {
        return order_fault(without(whole, index)).value().sentence;
    };
    CHECK(fault_without(0) == "the setup has no telescope");
    CHECK(fault_without(1) == "the setup has no focuser");
    CHECK(fault_without(2) == "the setup has no splitter head");
    CHECK(fault_without(3) == "the setup has no eyepiece pair");
    CHECK(fault_without(4) == "the setup has no observer");
    CHECK(fault_without(5) == "the setup has no target");
    CHECK(order_fault(Setup{}).value().sentence == "the setup has no telescope");
}

TEST_CASE("a second telescope, focuser or head is a fault of that second part") {
    for (const std::size_t index : {0, 1, 2}) {
        Setup setup = plain_setup();
        const auto place = static_cast<std::ptrdiff_t>(index);
        const Part copy = setup.parts[index];
        setup.parts.insert(setup.parts.begin() + place + 1, copy);
        const auto fault = order_fault(setup);
        REQUIRE(fault.has_value());
        CHECK(fault->part == index + 1);
        CHECK(fault->sentence.find("it can have only one") != std::string::npos);
    }
}

TEST_CASE("a part out of the order of the light is named with the one before it") {
    Setup setup = plain_setup();
    setup.parts.insert(setup.parts.begin() + 3, {"Late ring", Spacer{}, {}});
    const auto fault = order_fault(setup);
    REQUIRE(fault.has_value());
    CHECK(fault->part == 3);
    CHECK(fault->sentence.find("'Late ring'") != std::string::npos);
    CHECK(fault->sentence.find("'Head'") != std::string::npos);
}

TEST_CASE("light passes telescope, focuser, chain and head in order, and of the eyepieces only the "
          "chosen pair") {
    Setup setup = plain_setup({{"Ring", Spacer{}, {}}});
    setup.parts.insert(setup.parts.begin() + 5, {"Second pair", EyepiecePair{}, {}});
    Choice choice = with_valid_choice(setup).chosen;
    CHECK(parts_in_light(setup, choice) == std::vector<std::size_t>{0, 1, 2, 3, 4});
    choice.eyepiece = 5;
    CHECK(parts_in_light(setup, choice) == std::vector<std::size_t>{0, 1, 2, 3, 5});
    CHECK(parts_with_role(setup, Role::eyepiece) == std::vector<std::size_t>{4, 5});
}

TEST_CASE("a choice that points at nothing of its role moves to the first that has it, a valid one "
          "stays") {
    Setup setup = plain_setup();
    setup.parts.insert(setup.parts.begin() + 4, {"Second pair", EyepiecePair{}, {}});
    setup.chosen = {4, 99, 0};
    setup = with_valid_choice(setup);
    CHECK(setup.chosen == Choice{4, 5, 6});
    CHECK(with_valid_choice(Setup{}).chosen == Choice{0, 0, 0});
}

TEST_CASE("asking for a part as the wrong kind breaks the contract") {
    const Setup setup = plain_setup();
    CHECK(part_as<Focuser>(setup, 1) == Focuser{});
    CHECK_THROWS_AS(part_as<Focuser>(setup, 0), BrokenContract);
    CHECK(find_part<Shifter>(setup) == nullptr);
    CHECK(find_part<SplitterHead>(setup) != nullptr);
}
