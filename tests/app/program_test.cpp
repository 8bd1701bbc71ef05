// The program as a user runs it: its output, its exit status, what it leaves on the disk.
#include <array>
#include <string>

#include "render/image.hpp"
#include "support/program_run.hpp"

#include <doctest/doctest.h>

using namespace test_program;

TEST_CASE("the exit status tells a fine setup from a poor one") {
    CHECK(run("check 2-shifter-cures-it").status == 0);
    CHECK(run("check 1-short-of-focus").status == 1);
    CHECK(run("check 3-fast-and-wide --json").status == 1);
}

TEST_CASE("check prints further pages where they are asked for, and not into JSON") {
    CHECK(says(run("check 2-shifter-cures-it --assumed"), "WHAT IS ASSUMED"));
    CHECK(says(run("check 2-shifter-cures-it --two-eyes"), "TELESCOPE OR HEAD?"));
    CHECK_FALSE(says(run("check 2-shifter-cures-it"), "WHAT IS ASSUMED"));
    CHECK(run("check 2-shifter-cures-it --assumed --json").status == 2);
}

TEST_CASE("what each eye sees is drawn without a display, two pictures beside each other") {
    const ScratchFolder scratch;
    const std::string file = scratch.at("sight.png").string();
    CHECK(run("sight 2-shifter-cures-it --subject planet --height 96 -o '" + file + "'").status
          == 0);
    const auto image = beamfork::read_png(file);
    REQUIRE(image.has_value());
    CHECK(image->width == 192);
    CHECK(image->height > 96);          // the names stand below
    CHECK(image->at(48, 48)[0] > 100);  // the planet's disc in the middle of the left picture
    CHECK(run("sight 2-shifter-cures-it --subject comet").status == 2);
}

TEST_CASE(
    "solve prints what gives the wanted result, and the exit status says whether it can be had") {
    // Each mm of the adapter is one of margin: the demo stands 35 mm out with 1 mm of it and 80 mm of travel, so that
    // 5 to spare are had with 31 mm, and 41 never, with half of the travel being 40.
    const std::string number =
        "solve 2-shifter-cures-it --vary 'Thread adapter.length_mm' --for margin ";
    const Ran found = run(number + "--wanted 5");
    CHECK(found.status == 0);
    CHECK(says(found, "reaches focus, 5 mm to spare"));
    CHECK(says(found, "Focus is reached from 0 mm to 35.9"));
    const Ran json = run(number + "--wanted '0.5 cm' --json");
    CHECK(json.status == 0);
    CHECK(says(json, "\"wanted\": 5.0"));
    CHECK(says(json, "\"reaches_focus\": true"));
    const Ran none = run(number + "--wanted 41");
    CHECK(none.status == 1);
    CHECK(says(none, "gives 41.0 mm. Nearest:"));
    CHECK(run(number + "--wanted 41 --json").status == 1);
}

TEST_CASE("solve names what it knows, and the nearest to what it does not") {
    const Ran list = run("solve 2-shifter-cures-it --list");
    CHECK(list.status == 0);
    CHECK(says(list, "\"Thread adapter.length_mm\""));
    CHECK(says(list, "fully_lit"));
    CHECK(says(run("solve 2-shifter-cures-it --list --json"), "\"beamfork_solve_list\": 1"));
    const Ran number =
        run("solve 2-shifter-cures-it --vary 'Thread adaptor.length' --for margin --wanted 5");
    CHECK(number.status == 2);
    CHECK(says(number, "did you mean 'Thread adapter.length_mm'?"));
    const Ran result =
        run("solve 2-shifter-cures-it --vary 'Thread adapter.length_mm' --for margn --wanted 5");
    CHECK(result.status == 2);
    CHECK(says(result, "did you mean 'margin'?"));
    const Ran wanted = run(
        "solve 2-shifter-cures-it --vary 'Thread adapter.length_mm' --for margin --wanted '8 deg'");
    CHECK(wanted.status == 2);
    CHECK(says(wanted, "a length is expected"));
    CHECK(run("solve 2-shifter-cures-it").status == 2);
    CHECK(run("solve no-such-file --list").status == 2);
}

TEST_CASE("a home measurement is worked out on the command line") {
    const Ran fine = run("measure light_path_by_travel 'without_mm=80 ± 0.3' 'with_mm=45 ± 0.4' "
                         "'adapters_mm=0 ± 0'");
    CHECK(fine.status == 0);
    CHECK(says(fine, "Light path: 35.00 ± 0.50 mm"));  // 3, 4, 5
    CHECK(says(run("measure light_path_by_travel with_mm=45 without_mm=80 --json"),
               "\"light_path_mm\": 35.0"));
    CHECK(says(run("measure field_stop_by_drift"), "Caution: Never the Sun"));
    CHECK(run("measure field_stop").status == 2);
    CHECK(run("measure light_path_by_travel with=45").status == 2);
}

TEST_CASE("bad files end with status 2, the line and what was expected") {
    const ScratchFolder scratch;
    const std::string head = "beamfork = 1\n[[part]]\nkind = \"refractor\"\nname = \"R\"\n";
    struct Bad {
        std::string name;
        std::string text;
        std::string must_say;
    };
    const std::array bad{
        Bad{"typo.toml", head + "aperture_m = 100\n", "line 5: 'aperture_m' of 'R' has no effect"},
        Bad{"kind.toml", "beamfork = 1\n[[part]]\nkind = \"refracter\"\nname = \"R\"\n",
            "refractor"},
        Bad{"type.toml", head + "aperture_mm = \"wide\"\n", ":5:"},
        Bad{"negative.toml", head + "aperture_mm = -100\n", "aperture_mm"},
        Bad{"nan.toml", head + "aperture_mm = nan\n", "finite"},
        Bad{"missing.toml", head, "no focuser"},
        Bad{"newer.toml", "beamfork = 99\n", "99"},
        Bad{"empty.toml", "", "empty.toml"},
        Bad{"noise.toml", std::string(10'000'000, '\xA7'), "noise.toml"},
    };
    for (const Bad& one : bad) {
        CAPTURE(one.name);
        const Ran ran = run("check '" + scratch.file(one.name, one.text) + "'");
        CAPTURE(ran.output.substr(0, 500));
        CHECK(ran.status == 2);
        CHECK(says(ran, one.must_say));
    }
    CHECK(run("check /no/such/file.toml").status == 2);
    CHECK(says(run("check 1-short-of-focos"), "did you mean '1-short-of-focus'"));
}

TEST_CASE("a picture needs no display and has the size that was asked for") {
    const ScratchFolder scratch;
    const auto out = scratch.at("out.png");
    const Ran ran = run("picture 1-short-of-focus --size 320x200 -o '" + out.string() + "'");
    CAPTURE(ran.output);
    REQUIRE(ran.status == 0);
    const auto image = beamfork::read_png(out);
    REQUIRE(image.has_value());
    CHECK(image->width == 320);
    CHECK(image->height == 200);
    CHECK(run("picture 1-short-of-focus --size 320x200 -o /no/such/folder/out.png").status == 2);
}

TEST_CASE("a picture without a ground shows through where nothing is, with or without names") {
    const ScratchFolder scratch;
    const auto out = scratch.at("clear.png");
    REQUIRE(run("picture 2-shifter-cures-it --transparent --size 320x200 -o '" + out.string() + "'")
                .status
            == 0);
    const auto image = beamfork::read_png(out);
    REQUIRE(image.has_value());
    CHECK(image->at(0, 199)[3] == 0);
    int covered = 0;
    for (std::size_t i = 3; i < image->rgba.size(); i += 4)
        covered += image->rgba[i] == 255 ? 1 : 0;
    CHECK(covered > 320 * 200 / 20);  // the telescope's body
}

TEST_CASE("without a display the window says what works instead") {
    const Ran ran = run("1-short-of-focus");
    CHECK(ran.status == 2);
    CHECK(says(ran, "beamfork picture"));
}
