#include "parts/fitting.hpp"
#include "parts/mount.hpp"
#include "parts/part.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::vector<Fitting> claimed() {
    std::vector<Fitting> all;
    for (std::size_t i = 2; i < fitting_words().size(); ++i)
        all.push_back(static_cast<Fitting>(i));
    return all;
}

}  // namespace

TEST_CASE("every barrel and thread has one mate, of the same size and the other sex") {
    for (const Fitting one : claimed()) {
        const std::string word = to_word(one);
        const std::string mate = to_word(mate_of(one));
        CAPTURE(word);
        CHECK(mate_of(mate_of(one)) == one);
        CHECK(word.substr(0, word.rfind(' ')) == mate.substr(0, mate.rfind(' ')));
        CHECK(word != mate);
        int fitting = 0;
        for (const Fitting other : claimed())
            fitting += fits(one, other) ? 1 : 0;
        CHECK(fitting == 1);
    }
}

TEST_CASE("an unstated end claims nothing, a maker's own end fits only its like") {
    for (const Fitting one : claimed()) {
        CHECK(fits(one, Fitting::unstated));
        CHECK(fits(Fitting::unstated, one));
        CHECK_FALSE(fits(Fitting::own, one));
    }
    CHECK(fits(Fitting::own, Fitting::own));
}

// M42 x 1 is the thread of cameras, M42 x 0.75 that of telescopes; they do not go together (optics glossary).
TEST_CASE("the camera's M42 is not the telescope's M42") {
    CHECK_FALSE(fits(Fitting::m42_female, Fitting::camera_m42_male));
    CHECK(is_false_friend(Fitting::m42_female, Fitting::camera_m42_male));
    CHECK(is_false_friend(Fitting::camera_m42_male, Fitting::m42_male));
    CHECK_FALSE(is_false_friend(Fitting::m42_female, Fitting::m48_male));
}

TEST_CASE("a filter's thread belongs to the barrel of its size") {
    CHECK(screws_into_barrel(Fitting::barrel_125) == Fitting::filter_125_male);
    CHECK(screws_into_barrel(Fitting::barrel_2) == Fitting::m48_male);
    CHECK_FALSE(screws_into_barrel(Fitting::holder_2).has_value());
}

TEST_CASE("every part from focuser to eyepieces tells its ends, and those it has no use for are "
          "left out") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        const auto has = [&](const char* key) { return field_value(kind.fresh, key).has_value(); };
        const bool is_joined = kind.role >= Role::focuser && kind.role <= Role::eyepiece;
        CHECK(has("front_fitting") == (is_joined && kind.role != Role::focuser));
        CHECK(has("rear_fitting") == (is_joined && kind.role != Role::eyepiece));
        CHECK(has("mass_g") == (is_joined && kind.role != Role::focuser));
        CHECK(mount_of(kind.fresh).has_value() == is_joined);
        if (is_joined) CHECK(*mount_of(kind.fresh) == Mount{});
    }
}
