// Films on the disk: as many pictures as they should have, of the right size, and nothing left when given up.
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "app/commands/command_line.hpp"
#include "app/export/film.hpp"
#include "app/export/video_pipe.hpp"
#include "desk/open_setup.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>
#include <unistd.h>

using namespace beamfork;

namespace {

namespace fs = std::filesystem;

struct FilmFolder {
    fs::path path = fs::temp_directory_path() / ("beamfork-film-" + std::to_string(getpid()));
    FilmFolder() { fs::create_directories(path); }
    FilmFolder(const FilmFolder&) = delete;
    FilmFolder& operator=(const FilmFolder&) = delete;
    ~FilmFolder() { fs::remove_all(path); }
    [[nodiscard]] std::ptrdiff_t entries() const {
        return std::distance(fs::directory_iterator(path), {});
    }
};

Document filmed_document() { return open_named("2-shifter-cures-it").value().document; }

MakeFilm small_film() {
    MakeFilm film;
    film.width = 160;
    film.height = 90;
    film.fps = 5;
    film.turntable.seconds = 1;
    return film;
}

bool goes_on(int, int) { return true; }

bool is_there(const std::string& program) {
    return std::system(("command -v " + program + " > /dev/null").c_str()) == 0;
}

std::string said_by(const std::string& command) {
    std::string text;
    FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    for (int c = 0; (c = std::fgetc(pipe)) != EOF;)
        text += static_cast<char>(c);
    pclose(pipe);
    return text;
}

}  // namespace

TEST_CASE("a film as single pictures has each of them, whole, and they differ as the train turns") {
    const FilmFolder folder;
    MakeFilm film = small_film();
    film.frames = (folder.path / "frames").string();
    int told = 0;
    REQUIRE(write_film(filmed_document(), film, [&](int done, int all) {
        CHECK(done == told++);
        CHECK(all == 5);
        return true;
    }));
    const auto first = read_png(fs::path(film.frames) / "frame-00001.png");
    const auto third = read_png(fs::path(film.frames) / "frame-00003.png");
    REQUIRE(first.has_value());
    REQUIRE(third.has_value());
    CHECK(first->width == 160);
    CHECK(first->height == 90);
    CHECK(compare(*first, *third)->mean > 1);
    CHECK(fs::exists(fs::path(film.frames) / "frame-00005.png"));
    CHECK_FALSE(fs::exists(fs::path(film.frames) / "frame-00006.png"));
}

TEST_CASE("a film that is given up leaves nothing behind, and what was there before stays") {
    const FilmFolder folder;
    const auto stops_at_third = [](int done, int) { return done < 3; };
    MakeFilm film = small_film();
    film.frames = (folder.path / "frames").string();
    CHECK_FALSE(write_film(filmed_document(), film, stops_at_third).has_value());
    CHECK(folder.entries() == 0);
    film.frames = folder.path.string();
    std::ofstream(folder.path / "notes.txt") << "mine";
    CHECK_FALSE(write_film(filmed_document(), film, stops_at_third).has_value());
    CHECK(folder.entries() == 1);
    if (!is_there("ffmpeg")) return;
    film.frames.clear();
    film.output = (folder.path / "film.mp4").string();
    CHECK_FALSE(write_film(filmed_document(), film, stops_at_third).has_value());
    CHECK(folder.entries() == 1);
}

TEST_CASE("a film as one file has its size, rate and length"
          * doctest::skip(!is_there("ffprobe"))) {
    const FilmFolder folder;
    for (const char* name : {"film.mp4", "film.webm"}) {
        CAPTURE(name);
        MakeFilm film = small_film();
        film.output = (folder.path / name).string();
        const auto written = write_film(filmed_document(), film, goes_on);
        REQUIRE_MESSAGE(written.has_value(), (written ? "" : to_text(written.error())));
        const std::string probe = said_by(
            "ffprobe -v error -count_frames -show_entries "
            "stream=width,height,r_frame_rate,nb_read_frames,color_space -of default=nk=0:nw=1 '"
            + film.output + "'");
        for (const char* fact : {"width=160", "height=90", "r_frame_rate=5/1", "nb_read_frames=5",
                                 "color_space=bt709"}) {
            CAPTURE(probe);
            CHECK(probe.find(fact) != std::string::npos);
        }
    }
    CHECK(folder.entries() == 2);
}

TEST_CASE("without ffmpeg it says what to install and what works instead") {
    const FilmFolder folder;
    const auto pipe = VideoPipe::start(folder.path / "film.mp4", 64, 64, 10, "no-such-program");
    REQUIRE_FALSE(pipe.has_value());
    CHECK(pipe.error().code == ErrorCode::not_found);
    CHECK(pipe.error().what.find("apt install ffmpeg") != std::string::npos);
    CHECK(pipe.error().what.find("--frames") != std::string::npos);
    CHECK(folder.entries() == 0);
    CHECK(VideoPipe::start("/no/such/folder/film.mp4", 64, 64, 10).error().code
          == ErrorCode::no_permission);
}

TEST_CASE("a program that ends before the film does is an error, not our end") {
    const FilmFolder folder;
    auto pipe = VideoPipe::start(folder.path / "film.mp4", 640, 480, 10, "false");
    REQUIRE(pipe.has_value());
    const Image image{
        .width = 640, .height = 480, .rgba = std::vector<std::uint8_t>(640 * 480 * 4)};
    Result<void> added = pipe->add(image);
    if (added) added = pipe->add(image);
    CHECK_FALSE(added.has_value());
    CHECK_FALSE(fs::exists(folder.path / "film.mp4"));
}

TEST_CASE("film takes where to, how long and how large, and refuses what cannot be") {
    const auto read = [](std::vector<const char*> words) {
        words.insert(words.begin(), {"beamfork", "film", "mine.train.toml"});
        return read_command_line(static_cast<int>(words.size()), words.data());
    };
    const auto task = read({"-o", "out.webm", "--seconds", "6", "--fps", "25", "--size", "640x360",
                            "--about", "train", "--from", "90", "--names", "--caption", "A club"});
    REQUIRE(task.has_value());
    const auto& film = std::get<MakeFilm>(*task);
    CHECK(film.output == "out.webm");
    CHECK(film.turntable.seconds == 6);
    CHECK(film.fps == 25);
    CHECK(film.width == 640);
    CHECK(film.whole_train);
    CHECK(near(film.turntable.start_yaw_rad, 1.5707963, 1e-6));  // a quarter turn
    CHECK(film.turntable.options.labels);
    CHECK(film.turntable.caption == "A club");
    CHECK_FALSE(std::get<MakeFilm>(*read({})).whole_train);
    CHECK_FALSE(read({"-o", "out.gif"}).has_value());
    CHECK_FALSE(read({"-o", "out.mp4", "--frames", "folder"}).has_value());
    CHECK_FALSE(read({"--size", "641x360"}).has_value());
    CHECK(read({"--size", "641x360", "--frames", "folder", "--transparent"}).has_value());
    CHECK_FALSE(read({"--transparent"}).has_value());
    CHECK_FALSE(read({"--seconds", "0"}).has_value());
}

TEST_CASE("a tour is filmed in its own time, and an unknown one is told with the nearest name") {
    const FilmFolder folder;
    MakeFilm film = small_film();
    film.fps = 1;
    film.tour = "what-glass-does-to-light";
    film.hold_s = 1;
    film.frames = (folder.path / "tour").string();
    REQUIRE(write_film(filmed_document(), film, goes_on));
    // Three steps held for 1 s and flights of 2 s between them.
    CHECK(std::distance(fs::directory_iterator(film.frames), {}) == 7);
    film.tour = "what-glas-does-to-light";
    const auto mistyped = write_film(filmed_document(), film, goes_on);
    REQUIRE_FALSE(mistyped);
    CHECK(mistyped.error().what.find("did you mean 'what-glass-does-to-light'?")
          != std::string::npos);
}

TEST_CASE("a question is filmed: asked for its time, then answered, in a tour that is called by "
          "its title") {
    const FilmFolder folder;
    MakeFilm film = small_film();
    film.fps = 1;
    film.tour = "what a SHIFTER does";  // five steps, of which the second asks
    film.hold_s = 1;
    film.ask_s = 2;
    film.frames = (folder.path / "tour").string();
    REQUIRE(write_film(filmed_document(), film, goes_on));
    // Five steps held for 1 s, four flights of 2 s, and 2 s for the question.
    CHECK(std::distance(fs::directory_iterator(film.frames), {}) == 15);
    const auto frame = [&](int number) {
        return read_png(fs::path(film.frames) / fmt::format("frame-{:05}.png", number)).value();
    };
    // From 3 s to 5 s it asks: pictures of 3 s and 4 s are alike; at 6 s the answer stands there.
    CHECK(compare(frame(4), frame(5))->mean < 0.01);
    CHECK(compare(frame(5), frame(7))->mean > 0.5);
}
