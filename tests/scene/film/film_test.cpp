// A film as a function of time: closed forms of a turntable.
#include "scene/film/film.hpp"
#include "scene/picture/light_arrival.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/constants.hpp>

using namespace beamfork;

namespace {

constexpr Bounds long_box{{-60, -40, -200}, {80, 160, 700}};

}  // namespace

TEST_CASE("a film has as many pictures as its seconds times its rate, and at least one") {
    Film film;
    film.seconds = 12;
    CHECK(frame_count(film, 30) == 360);
    film.seconds = 2.5;
    CHECK(frame_count(film, 24) == 60);
    film.seconds = 0.01;
    CHECK(frame_count(film, 10) == 1);
    CHECK(near(second_of(45, 30), 1.5, rounding));
}

TEST_CASE("a turntable goes round once at an even rate and ends where it began") {
    TurntableLook look;
    look.seconds = 8;
    look.start_yaw_rad = 0.5F;
    look.caption = "Round";
    const Film film = turntable(long_box, look);
    const double single = 1e-5;  // angles in single precision
    CHECK(near(film.at(0).camera.yaw_rad, 0.5, single));
    CHECK(near(film.at(2).camera.yaw_rad, 0.5 + glm::half_pi<double>(), single));
    CHECK(near(film.at(4).camera.yaw_rad, 0.5 - glm::pi<double>(), single));
    CHECK(film.at(8) == film.at(0));
    CHECK(film.at(3).camera.distance_mm == film.at(0).camera.distance_mm);
    CHECK(film.at(3).camera.pitch_rad == look.pitch_rad);
    CHECK(film.at(3).caption == "Round");
}

TEST_CASE("from all round, every corner stays in the picture, and one side comes near its edge") {
    for (const float aspect : {16.0F / 9.0F, 1.0F, 0.5625F}) {
        CAPTURE(aspect);
        TurntableLook look;
        look.aspect = aspect;
        look.pitch_rad = 0.4F;
        const Film film = turntable(long_box, look);
        const Viewport view{1000 * aspect, 1000};
        float nearest_edge = 1e30F;
        for (int i = 0; i < 97; ++i) {
            const Camera camera = film.at(film.seconds * i / 97).camera;
            for (unsigned corner = 0; corner < 8; ++corner) {
                const glm::vec3 share((corner & 1U) != 0, (corner & 2U) != 0, (corner & 4U) != 0);
                const auto seen =
                    project(camera, glm::mix(long_box.low, long_box.high, share), view);
                REQUIRE(seen.has_value());
                CHECK(seen->x >= 0);
                CHECK(seen->x <= view.width);
                CHECK(seen->y >= 0);
                CHECK(seen->y <= view.height);
                nearest_edge =
                    std::min({nearest_edge, seen->x / view.width, 1 - seen->x / view.width,
                              seen->y / view.height, 1 - seen->y / view.height});
            }
        }
        CHECK(nearest_edge < 0.05F);  // the margin is 6 % of half the picture
    }
}

TEST_CASE("in a film the packets' place follows from the second alone") {
    TurntableLook look;
    look.options.light_speed_mm_s = 100;
    look.turns = 0;
    const Film film = with_motion(turntable({{-1, -1, -1}, {1, 1, 1}}, look), {.light = true});
    CHECK(film.at(0).options.light_front_mm == 0);
    CHECK(near(film.at(1.5).options.light_front_mm, 150, 1e-3));
    CHECK(near(film.at(3).options.light_front_mm, 300 - packet_spacing_mm, 1e-3));
    CHECK(film.at(1.5) == film.at(1.5));
    CHECK(film.at(0).camera == film.at(7).camera);  // no turn
    CHECK(film.at(2).options.apart == 0);
}

TEST_CASE("in a film the parts begin together, come apart and are together again") {
    const Film film = with_motion(turntable({{-1, -1, -1}, {1, 1, 1}}, {}), {.parts_apart = true});
    CHECK(film.at(0).options.apart == 0);
    CHECK(film.at(film.seconds / 2).options.apart == 1);
    CHECK(film.at(film.seconds).options.apart == 0);
    float before = 0;
    for (double second = 0; second <= film.seconds / 2; second += 0.1) {
        const float now = film.at(second).options.apart;
        CHECK(now >= before);
        CHECK(now - before < 0.08F);  // no jump
        before = now;
        CHECK(near(now, film.at(film.seconds - second).options.apart, 1e-6));
    }
}
