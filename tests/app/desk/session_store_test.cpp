#include <fstream>

#include "app/desk/session_store.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

std::filesystem::path scratch(const std::string& name) {
    return std::filesystem::temp_directory_path() / ("beamfork-session-" + std::to_string(getpid()))
           / name;
}

}  // namespace

TEST_CASE("the window's arrangement comes back as it was left") {
    StoredSession stored;
    stored.session.layout.text_scale = 1.5F;
    stored.session.view.labels = false;
    stored.session.view.dimensions = false;
    stored.session.view.night = true;
    stored.session.view.night_brightness = 0.3F;
    stored.session.layout.folded = {"focus_budget"};
    stored.session.files.folder = "/somewhere";
    stored.session.tune.varied = "Adapter.length_mm";
    stored.session.tune.watched = "true_field";
    stored.session.tune.wanted = {{"margin", "7"}, {"true_field", "30'"}};
    stored.recent_files = {"/a.train.toml", "/b.train.toml"};
    stored.session.comparison.with = "open:2";
    stored.session.layout.parts_at_left = true;
    stored.session.layout.narrow_shows = "fit";
    stored.open_files = {"/b.train.toml", "/c.train.toml"};
    stored.shown_file = "/c.train.toml";
    const auto file = scratch("session.json");
    REQUIRE(store_session(file, stored).has_value());
    const StoredSession back = load_session(file);
    CHECK(back.session.layout.text_scale == 1.5F);
    CHECK_FALSE(back.session.view.labels);
    CHECK_FALSE(back.session.view.dimensions);
    CHECK(back.session.view.night);
    CHECK(back.session.view.night_brightness == 0.3F);
    CHECK(back.session.layout.folded == stored.session.layout.folded);
    CHECK(back.session.files.folder == "/somewhere");
    CHECK(back.session.tune.varied == "Adapter.length_mm");
    CHECK(back.session.tune.watched == "true_field");
    CHECK(back.session.tune.wanted == stored.session.tune.wanted);
    CHECK(back.recent_files == stored.recent_files);
    CHECK(back.session.comparison.with.empty());  // a number of that run
    CHECK(back.session.layout.parts_at_left);
    CHECK(back.session.layout.narrow_shows == "fit");
    CHECK(back.open_files == stored.open_files);
    CHECK(back.shown_file == stored.shown_file);
    std::filesystem::remove_all(file.parent_path());
}

TEST_CASE("a missing, broken or foolish session file opens the window as new") {
    const StoredSession fresh;
    CHECK(load_session(scratch("none.json")).session.layout.text_scale
          == fresh.session.layout.text_scale);
    const auto file = scratch("broken.json");
    std::filesystem::create_directories(file.parent_path());
    for (const char* text : {"", "{", "[1,2]", R"({"labels": "perhaps"})",
                             R"({"text_scale": 1e30, "recent_files": 7})"}) {
        std::ofstream(file, std::ios::trunc) << text;
        const StoredSession back = load_session(file);
        CHECK(back.session.layout.text_scale >= 0.75F);
        CHECK(back.session.layout.text_scale <= 3.0F);
        CHECK(back.recent_files.empty());
    }
    std::filesystem::remove_all(file.parent_path());
}
