#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "render/image.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

/// A folder of its own for each test, gone afterwards.
struct Folder {
    std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("beamfork-image-" + std::to_string(getpid()));
    Folder() { std::filesystem::create_directories(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() { std::filesystem::remove_all(path); }
};

Image stripes(int width, int height) {
    Image image{.width = width, .height = height, .rgba = {}};
    for (int i = 0; i < width * height * 4; ++i)
        image.rgba.push_back(static_cast<std::uint8_t>(i * 37));
    return image;
}

}  // namespace

TEST_CASE("a picture written as PNG reads back the same") {
    const Folder folder;
    const Image image = stripes(7, 5);
    REQUIRE(write_png(image, folder.path / "stripes.png").has_value());
    const auto back = read_png(folder.path / "stripes.png");
    REQUIRE(back.has_value());
    CHECK(*back == image);
    CHECK(std::distance(std::filesystem::directory_iterator(folder.path), {})
          == 1);  // no draft is left behind
}

TEST_CASE("a picture that cannot be written says where, and leaves nothing") {
    const auto written = write_png(stripes(2, 2), "/no-such-folder/picture.png");
    REQUIRE_FALSE(written.has_value());
    CHECK(written.error().code == ErrorCode::not_found);
    CHECK(written.error().where.file == "/no-such-folder/picture.png");
}

TEST_CASE("what is missing and what is no PNG are different errors") {
    const Folder folder;
    CHECK(read_png(folder.path / "missing.png").error().code == ErrorCode::not_found);
    std::ofstream(folder.path / "noise.png") << "this is no picture";
    CHECK(read_png(folder.path / "noise.png").error().code == ErrorCode::bad_input);
}

TEST_CASE("the difference of two pictures counts colours, not alpha") {
    Image a{.width = 2, .height = 1, .rgba = {10, 20, 30, 255, 40, 50, 60, 255}};
    Image b = a;
    b.rgba[4] = 46;
    b.rgba[7] = 0;
    const auto difference = compare(a, b);
    REQUIRE(difference.has_value());
    CHECK(difference->greatest == 6);
    CHECK(near(difference->mean, 1.0, 1e-12));  // six steps over six colours
    CHECK(difference_picture(a, b).at(1, 0)[0] == 48);
}

TEST_CASE("pictures of different size cannot be compared") {
    CHECK(compare(stripes(2, 2), stripes(3, 2)).error().code == ErrorCode::bad_input);
}
