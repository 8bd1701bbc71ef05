#include <vector>

#include "app/commands/command_line.hpp"
#include "app/commands/option_words.hpp"
#include "scene/picture/light_arrival.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Result<Task> read(std::vector<const char*> words) {
    words.insert(words.begin(), "beamfork");
    return read_command_line(static_cast<int>(words.size()), words.data());
}

}  // namespace

TEST_CASE("without a command the window opens, on the file that is named") {
    const auto task = read({"mine.train.toml"});
    REQUIRE(task.has_value());
    REQUIRE(std::holds_alternative<OpenWindow>(*task));
    CHECK(std::get<OpenWindow>(*task).file == "mine.train.toml");
    CHECK(std::get<OpenWindow>(*read({})).file.empty());
}

TEST_CASE("check takes a file and, if asked, answers in JSON") {
    const auto task = read({"check", "mine.train.toml", "--json"});
    REQUIRE(task.has_value());
    REQUIRE(std::holds_alternative<CheckFile>(*task));
    CHECK(std::get<CheckFile>(*task).json);
    CHECK_FALSE(std::get<CheckFile>(*read({"check", "mine.train.toml"})).json);
    CHECK_FALSE(read({"check"}).has_value());
}

TEST_CASE("picture takes a size, a view and how tubes are drawn") {
    const auto task =
        read({"picture", "mine.train.toml", "-o", "out.png", "--size", "800x600", "--view", "side",
              "--shells", "hidden", "--ground", "white", "--no-labels"});
    REQUIRE(task.has_value());
    const auto& picture = std::get<MakePicture>(*task);
    CHECK(picture.output == "out.png");
    CHECK(picture.width == 800);
    CHECK(picture.height == 600);
    CHECK(picture.view == StandardView::side);
    CHECK(picture.options.shells == ShellView::hidden);
    CHECK(picture.options.light_ground);
    CHECK_FALSE(picture.options.labels);
}

TEST_CASE("picture without a ground, from a place of one's own") {
    const auto task = read({"picture", "mine.train.toml", "--transparent", "--no-names", "--camera",
                            "90 -30 450 1 2.5 -3", "--size", "7680x4320"});
    REQUIRE(task.has_value());
    const auto& picture = std::get<MakePicture>(*task);
    CHECK(picture.transparent);
    CHECK_FALSE(picture.options.labels);
    CHECK(picture.width == 7680);
    REQUIRE(picture.camera.has_value());
    CHECK(near(picture.camera->yaw_rad, 1.5707963, 1e-6));  // a quarter turn
    CHECK(near(picture.camera->pitch_rad, -0.5235988, 1e-6));
    CHECK(picture.camera->distance_mm == 450);
    CHECK(picture.camera->target == glm::vec3{1, 2.5F, -3});
    CHECK(read_camera(camera_words(*picture.camera))->target == picture.camera->target);
    for (const char* wrong : {"", "1 2 3", "0 91 450 0 0 0", "0 0 -1 0 0 0", "a b c d e f",
                              "1 2 3 4 5 6 7", "nan 0 1 0 0 0"}) {
        CAPTURE(wrong);
        CHECK_FALSE(read_camera(wrong).has_value());
    }
    CHECK_FALSE(read({"picture", "mine.train.toml", "--transparent", "--with-panels"}).has_value());
}

TEST_CASE(
    "picture shows the study that is asked for, over the whole strip when that is asked too") {
    const auto task =
        read({"picture", "mine.train.toml", "--with-panels", "--study", "magnification", "--wide"});
    REQUIRE(task.has_value());
    CHECK(std::get<MakePicture>(*task).with_panels);
    CHECK(std::get<MakePicture>(*task).study == "magnification");
    CHECK(std::get<MakePicture>(*task).study_is_wide);
    CHECK_FALSE(read({"picture", "mine.train.toml", "--study", "horoscope"}).has_value());
}

TEST_CASE("sight takes a subject and a layout, and is close enough by itself unless told") {
    const auto task = read({"sight", "mine.train.toml", "--subject", "double", "--layout", "merged",
                            "--separation-arcsec", "2.5", "--closer", "30"});
    REQUIRE(task.has_value());
    const auto& sight = std::get<PictureSight>(*task);
    CHECK(sight.request.scene.subject == SightSubject::double_star);
    CHECK(sight.request.scene.separation_arcsec == 2.5);
    CHECK(sight.request.layout == SightLayout::merged);
    CHECK(sight.request.closer == 30);
    CHECK_FALSE(sight.fits);
    CHECK(std::get<PictureSight>(*read({"sight", "mine.train.toml"})).fits);
    CHECK_FALSE(read({"sight", "mine.train.toml", "--subject", "comet"}).has_value());
}

TEST_CASE("a talk's screen takes a tour and a step, and has its own view") {
    const auto task = read({"picture", "a.toml", "--tour", "what-a-shifter-does", "--step", "2"});
    REQUIRE(task);
    CHECK(std::get<MakePicture>(*task).tour == "what-a-shifter-does");
    CHECK(std::get<MakePicture>(*task).step == 2);
    CHECK_FALSE(read({"picture", "a.toml", "--step", "2"}));
    CHECK_FALSE(std::get<MakePicture>(*task).is_revealed);
    const auto answered = read({"picture", "a.toml", "--tour", "What a shifter does", "--answer"});
    REQUIRE(answered);
    CHECK(std::get<MakePicture>(*answered).is_revealed);
    CHECK_FALSE(read({"picture", "a.toml", "--answer"}));
    const auto film = read({"film", "a.toml", "--tour", "x", "--ask", "3"});
    REQUIRE(film);
    CHECK(std::get<MakeFilm>(*film).ask_s == 3);
    CHECK_FALSE(read({"film", "a.toml", "--ask", "3"}));
    CHECK_FALSE(read({"picture", "a.toml", "--tour", "x", "--view", "top"}));
    CHECK_FALSE(read({"picture", "a.toml", "--tour", "x", "--with-panels"}));
}

TEST_CASE("tours takes a setup and asks for it") {
    const auto task = read({"tours", "2-shifter-cures-it"});
    REQUIRE(task);
    CHECK(std::get<ListTours>(*task).file == "2-shifter-cures-it");
    CHECK_FALSE(read({"tours"}));
}

TEST_CASE("measure takes a name and its readings") {
    const auto task =
        read({"measure", "field_stop_by_drift", "seconds=112 113", "declination_deg=4", "--json"});
    REQUIRE(task.has_value());
    const auto& measure = std::get<MeasureAtHome>(*task);
    CHECK(measure.name == "field_stop_by_drift");
    CHECK(measure.readings == std::vector<std::string>{"seconds=112 113", "declination_deg=4"});
    CHECK(measure.json);
    CHECK(std::get<MeasureAtHome>(*read({"measure"})).name.empty());
}

TEST_CASE("solve takes a number to vary, a result and what it is to be") {
    const auto task = read({"solve", "mine.train.toml", "--vary", "Adapter.length_mm", "--for",
                            "margin", "--wanted", "1/4 in", "--json"});
    REQUIRE(task.has_value());
    const auto& asked = std::get<SolveFor>(*task);
    CHECK(asked.vary == "Adapter.length_mm");
    CHECK(asked.result == "margin");
    CHECK(asked.wanted == "1/4 in");
    CHECK(asked.json);
    CHECK(std::get<SolveFor>(*read({"solve", "mine.train.toml", "--list"})).list);
    CHECK(std::get<SolveFor>(*read({"solve", "a", "--wanted", "-5"})).wanted == "-5");
    CHECK_FALSE(read({"solve"}).has_value());
}

TEST_CASE("a mistyped word is an error that names the nearest one") {
    const auto task = read({"picture", "mine.train.toml", "--view", "overveiw"});
    REQUIRE_FALSE(task.has_value());
    CHECK(task.error().code == ErrorCode::bad_input);
    CHECK(task.error().what.find("did you mean 'overview'") != std::string::npos);
    CHECK_FALSE(read({"picture", "mine.train.toml", "--colour", "red"}).has_value());
}

TEST_CASE("a picture's size is two whole numbers of pixels that a graphics card can draw") {
    CHECK(read_size("1920x1080").value() == glm::ivec2{1920, 1080});
    for (const char* wrong : {"", "1920", "x", "1920x", "x1080", "1920x1080x2", "10x10",
                              "99999x100", "a x b", "-800x600", "800.5x600", "nanxnan"}) {
        CAPTURE(wrong);
        CHECK_FALSE(read_size(wrong).has_value());
    }
}

TEST_CASE("help and version are text to print") {
    const auto help = read({"--help"});
    REQUIRE(std::holds_alternative<PrintText>(*help));
    const std::string& text = std::get<PrintText>(*help).text;
    for (const char* word : {"check", "picture", "Exit status", "Sun"}) {
        CAPTURE(word);
        CHECK(text.find(word) != std::string::npos);
    }
    CHECK(std::get<PrintText>(*read({"--version"})).text.find("beamfork 0.") == 0);
    CHECK(std::get<PrintText>(*read({"picture", "--help"})).text.find("--view")
          != std::string::npos);
}

TEST_CASE("picture and film paint the objective, let light move and pull the parts apart") {
    const auto picture =
        std::get<MakePicture>(*read({"picture", "a.toml", "--paint-objective", "--light-in-motion",
                                     "310", "--pull-apart", "0.5"}));
    CHECK(picture.options.paint_pupil);
    CHECK(picture.options.light_moves);
    CHECK_FALSE(picture.options.light_runs());  // a picture does not move
    CHECK(picture.options.light_front_mm == 310 - packet_spacing_mm);
    CHECK(picture.options.apart == 0.5F);
    const auto plain = std::get<MakePicture>(*read({"picture", "a.toml"}));
    CHECK((plain.options == ViewOptions{}));
    const auto film =
        std::get<MakeFilm>(*read({"film", "a.toml", "--paint-objective", "--light-in-motion",
                                  "--light-pace", "200", "--pull-apart", "--turns", "0"}));
    CHECK(film.turntable.options.paint_pupil);
    CHECK(film.motion.light);
    CHECK(film.motion.parts_apart);
    CHECK(film.turntable.options.light_speed_mm_s == 200);
    CHECK(film.turntable.turns == 0);
    CHECK_FALSE(read({"film", "a.toml", "--light-pace", "200"}).has_value());  // of what?
    CHECK_FALSE(read({"film", "a.toml", "--tour", "x", "--pull-apart"}).has_value());
    CHECK_FALSE(read({"picture", "a.toml", "--pull-apart", "2"}).has_value());
    CHECK_FALSE(read({"picture", "a.toml", "--over", "b.toml", "--pull-apart", "1"}).has_value());
}

TEST_CASE("check takes studies by name or by what their panels are called, or all of it") {
    const auto task = read({"check", "4", "--study", "fit", "--study", "two EYES"});
    REQUIRE(task.has_value());
    CHECK(std::get<CheckFile>(*task).studies == std::vector<std::string>{"fit", "alignment"});
    CHECK(std::get<CheckFile>(*read({"check", "4", "--full"})).full);
    CHECK_FALSE(read({"check", "4", "--full", "--json"}).has_value());
    CHECK_FALSE(read({"check", "4", "--full", "--study", "fit"}).has_value());
    CHECK_FALSE(read({"check", "4", "--study", "tours"}).has_value());  // nothing to print
}

TEST_CASE("a slip in a command's name is told, with or without a file behind it") {
    for (const auto& words : {std::vector<const char*>{"chekc"}, {"chekc", "4-fast-newtonian"}}) {
        const auto task = read(words);
        REQUIRE_FALSE(task.has_value());
        CHECK(task.error().what.find("did you mean 'check'?") != std::string::npos);
    }
    CHECK(read({"my-setup"}).has_value());  // like no command: perhaps a file, which opening tells
}

TEST_CASE("a format that is not had is refused before anything is made") {
    for (const auto& words : {std::vector<const char*>{"picture", "4", "-o", "x.jpg"},
                              {"sheet", "4", "-o", "x.pdf"},
                              {"sight", "4", "-o", "x"},
                              {"model", "4", "-o", "x.stl"},
                              {"film", "4", "-o", "x.avi"}}) {
        CAPTURE(words[0]);
        const auto task = read(words);
        REQUIRE_FALSE(task.has_value());
        CHECK(task.error().what.find("must end in ") != std::string::npos);
    }
    CHECK(read({"picture", "4", "-o", "X.PNG"}).has_value());
}
