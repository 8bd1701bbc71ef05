// The window's exports, carried out by the program itself beside the window.
#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

#include "app/commands/command_line.hpp"
#include "app/export/export_arguments.hpp"
#include "app/export/export_desk.hpp"
#include "document/setup_in_page.hpp"
#include "render/image.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

namespace fs = std::filesystem;

struct DeskFolder {
    fs::path path = fs::temp_directory_path() / ("beamfork-desk-" + std::to_string(getpid()));
    DeskFolder() { fs::create_directories(path); }
    DeskFolder(const DeskFolder&) = delete;
    DeskFolder& operator=(const DeskFolder&) = delete;
    ~DeskFolder() { fs::remove_all(path); }
};

Result<Task> read_words(std::vector<std::string> words) {
    words.insert(words.begin(), "beamfork");
    std::vector<const char*> pointers;
    for (const std::string& word : words)
        pointers.push_back(word.c_str());
    return read_command_line(static_cast<int>(pointers.size()), pointers.data());
}

/// Frames of a window that does nothing else, until the export has ended; false when it takes too long.
bool wait_for_end(ExportDesk& desk, Workbench& bench) {
    for (int i = 0; i < 1200; ++i) {
        desk.refresh(bench, {});
        if (!desk.state().is_running && !bench.view().message.text.starts_with("Writing"))
            return true;
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
    return false;
}

Workbench bench_with_foreign_key() {
    ReadSetup opened = open_named("2-shifter-cures-it").value();
    opened.document.top.unrecognised["colour_of_tube"] = "\"white\"";
    return Workbench(opened);
}

ExportRequests asking_for(const ExportOrder& order) {
    ExportRequests requests;
    requests.order = order;
    return requests;
}

}  // namespace

TEST_CASE("the words of every export are a command that asks for the same") {
    ExportOrder order{.kind = ExportKind::picture, .output = "out.png"};
    order.width = 3840;
    order.height = 2160;
    order.transparent = true;
    order.names = false;
    order.painted = order.light_moves = true;
    order.light_front_mm = 71.5F;
    order.apart = 0.25F;
    order.camera = {.target = {1, 2, 3}, .distance_mm = 400, .yaw_rad = -1, .pitch_rad = 0.5F};
    const auto picture = read_words(export_arguments(order, "a.train.toml"));
    REQUIRE(picture.has_value());
    const auto& drawn = std::get<MakePicture>(*picture);
    CHECK(drawn.output == "out.png");
    CHECK(drawn.width == 3840);
    CHECK(drawn.transparent);
    CHECK(drawn.allow_unknown);
    CHECK_FALSE(drawn.options.labels);
    CHECK(drawn.options.paint_pupil);
    CHECK(drawn.options.light_moves);
    CHECK(drawn.options.light_front_mm == 71.5F);
    CHECK(drawn.options.apart == 0.25F);
    REQUIRE(drawn.camera.has_value());
    CHECK(glm::distance(drawn.camera->target, order.camera.target) < 1e-3F);
    CHECK(std::abs(drawn.camera->yaw_rad - order.camera.yaw_rad) < 1e-5F);

    order.kind = ExportKind::film;
    order.width = 1280;
    order.height = 720;
    order.seconds = 6;
    order.single_pictures = true;
    order.whole_train = true;
    const auto film = read_words(export_arguments(order, "a.train.toml"));
    REQUIRE(film.has_value());
    CHECK(std::get<MakeFilm>(*film).frames == "out.png");
    CHECK(std::get<MakeFilm>(*film).turntable.seconds == 6);
    CHECK(std::get<MakeFilm>(*film).whole_train);
    CHECK(std::get<MakeFilm>(*film).turntable.options.paint_pupil);
    CHECK(std::get<MakeFilm>(*film).motion.light);
    CHECK(std::get<MakeFilm>(*film).motion.parts_apart);

    order.kind = ExportKind::model;
    order.output = "out.glb";
    order.light = false;
    const auto model = read_words(export_arguments(order, "a.train.toml"));
    REQUIRE(model.has_value());
    CHECK_FALSE(std::get<MakeModel>(*model).options.light);

    order.kind = ExportKind::sheet;
    order.output = "out.html";
    order.night = true;
    CHECK(std::get<MakeSheet>(*read_words(export_arguments(order, "a.train.toml"))).options.night);
}

TEST_CASE("a sheet is written beside the window, unknown keys and all, and the window is told") {
    const DeskFolder folder;
    Workbench bench = bench_with_foreign_key();
    ExportDesk desk(BEAMFORK_PROGRAM, [] {});
    ExportOrder order{.kind = ExportKind::sheet, .output = folder.path / "sheet.html"};
    desk.refresh(bench, asking_for(order));
    CHECK(desk.state().is_running);
    REQUIRE(wait_for_end(desk, bench));
    CHECK_FALSE(bench.view().message.is_error);
    CHECK(bench.view().message.text.find("sheet.html") != std::string::npos);
    std::ifstream page(order.output);
    const std::string text{std::istreambuf_iterator<char>(page), {}};
    CHECK(setup_in_page(text) == write_setup(bench.document()));
    CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 1);
}

TEST_CASE("an export that cannot be written tells why") {
    Workbench bench = bench_with_foreign_key();
    ExportDesk desk(BEAMFORK_PROGRAM, [] {});
    desk.refresh(bench, asking_for({.kind = ExportKind::model, .output = "/no/such/model.glb"}));
    REQUIRE(wait_for_end(desk, bench));
    CHECK(bench.view().message.is_error);
    CHECK(bench.view().message.text.find("/no/such/model.glb") != std::string::npos);
    ExportDesk broken("/no/such/program", [] {});
    broken.refresh(bench, asking_for({.kind = ExportKind::sheet, .output = "x.html"}));
    CHECK_FALSE(broken.state().is_running);
    CHECK(bench.view().message.is_error);
}

TEST_CASE("a film tells how far it is, and given up it leaves nothing") {
    const DeskFolder folder;
    Workbench bench = bench_with_foreign_key();
    ExportDesk desk(BEAMFORK_PROGRAM, [] {});
    ExportOrder order{.kind = ExportKind::film, .output = folder.path / "frames"};
    order.single_pictures = true;
    order.seconds = 600;
    order.width = 320;
    order.height = 180;
    desk.refresh(bench, asking_for(order));
    for (int i = 0; i < 1200 && !(desk.state().share >= 0 && fs::exists(order.output)); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    CHECK(desk.state().share >= 0);
    CHECK(desk.state().words.find("pictures") != std::string::npos);
    ExportRequests stop;
    stop.gives_up = true;
    desk.refresh(bench, stop);
    REQUIRE(wait_for_end(desk, bench));
    CHECK_FALSE(bench.view().message.is_error);
    CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 0);
}
