// Frame time against the number of ribbons of light, without a display: for this machine's software renderer and for
// graphics cards elsewhere. Prints JSON.
//
//   beamfork_bench_drawing [WIDTH HEIGHT SAMPLES [SECONDS]]      1920 1080 4 and 1 s a figure unless said otherwise
//
// The first demo's picture with its light drawn as often as it takes, each copy a little aside. "draw_ms" is a picture
// with the camera moved, "edit_ms" one with everything sent anew; both until the last pixel is there (glFinish), so
// that a card works on one picture at a time. Medians and minima of the frames.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <stdexcept>

#include "base/assets.hpp"
#include "document/setup_file.hpp"
#include "render/offscreen.hpp"
#include "render/renderer.hpp"
#include "scene/picture/picture.hpp"

#include <glad/gl.h>

#include <nlohmann/json.hpp>

using namespace beamfork;

namespace {

using Json = nlohmann::ordered_json;

template <class Value>
Value need(Result<Value> result) {
    if (!result) throw std::runtime_error(to_text(result.error()));
    return *std::move(result);
}

Frame demo_frame() {
    const char* const name = "assets/demos/1-short-of-focus.train.toml";
    const Setup setup = need(read_setup(asset(name).value(), name)).document.setup;
    return build_frame(setup, need(make_report(setup, setup.chosen, ClippingEffort{192})));
}

// The same light, in that many ribbons.
Frame with_ribbons(const Frame& frame, std::size_t count) {
    Frame more = frame;
    more.light.clear();
    for (std::size_t i = 0; i < count; ++i) {
        LightRibbon ribbon = frame.light[i % frame.light.size()];
        const auto copy = static_cast<float>(i / frame.light.size());
        const glm::vec3 aside{0.11F * copy, 0.07F * copy, 0};
        ribbon.from += aside;
        ribbon.to += aside;
        more.light.push_back(ribbon);
    }
    more.ray_count =
        static_cast<int>(static_cast<std::size_t>(frame.ray_count) * count / frame.light.size());
    ++more.revision;
    return more;
}

struct Times {
    double median = 0;
    double least = 0;
};

template <class Work>
Times times_of(double seconds, const Work& work) {
    std::vector<double> found;
    const auto begin = std::chrono::steady_clock::now();
    const auto since = [](auto start) {
        return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
            .count();
    };
    work();  // warm
    glFinish();
    while (found.size() < 5 || (since(begin) < 1000 * seconds && found.size() < 300)) {
        const auto start = std::chrono::steady_clock::now();
        work();
        glFinish();
        found.push_back(since(start));
    }
    std::sort(found.begin(), found.end());
    return {found[found.size() / 2], found.front()};
}

bool shows_something(const Renderer& renderer) {
    const Image image = renderer.read_pixels();
    return std::any_of(image.rgba.begin(), image.rgba.end(),
                       [](std::uint8_t value) { return value > 200 && value < 255; });
}

Json row_of(Renderer& renderer, Frame frame, const PictureSize& size, double seconds) {
    Camera camera = standard_view(StandardView::overview, frame,
                                  static_cast<float>(size.width) / static_cast<float>(size.height));
    const auto draw = [&] { need(renderer.draw(camera, ViewOptions{}, size)); };
    renderer.upload(frame);
    draw();
    if (!shows_something(renderer)) throw std::runtime_error("an empty picture");
    const Times drawn = times_of(seconds, draw);
    const Times edited = times_of(seconds, [&] {
        ++frame.revision;
        renderer.upload(frame);
        draw();
    });
    return {{"ribbons", frame.light.size()},
            {"draw_ms", drawn.median},
            {"draw_least_ms", drawn.least},
            {"edit_ms", edited.median},
            {"edit_least_ms", edited.least}};
}

void run(const PictureSize& size, double seconds) {
    const OffscreenContext context = need(OffscreenContext::create());
    Renderer renderer = need(Renderer::create());
    const auto* name = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
    const Frame demo = demo_frame();
    Json rows = Json::array();
    for (const std::size_t ribbons : {500U, 1000U, 2000U, 5000U, 10000U, 20000U, 50000U})
        rows.push_back(row_of(renderer, with_ribbons(demo, ribbons), size, seconds));
    Json errors = Json::array();
    for (const std::string& error : renderer.take_errors())
        errors.push_back(error);
    std::cout << Json{{"renderer", name == nullptr ? "" : name},
                      {"width", size.width},
                      {"height", size.height},
                      {"samples", size.samples},
                      {"bloom", size.bloom},
                      {"demo_ribbons", demo.light.size()},
                      {"rows", std::move(rows)},
                      {"errors", std::move(errors)}}
                     .dump(1)
              << "\n";
}

}  // namespace

int main(int count, char** words) {
    try {
        PictureSize size{1920, 1080};
        if (count > 2) size = {std::atoi(words[1]), std::atoi(words[2])};
        if (count > 3) size.samples = std::atoi(words[3]);
        run(size, count > 4 ? std::atof(words[4]) : 1);
    } catch (const std::exception& error) {
        std::cerr << error.what() << "\n";
        return 1;
    }
}
