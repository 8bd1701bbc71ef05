// What the tests of pictures share: a context without a display, a side view, simple bodies.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "base/srgb.hpp"
#include "render/offscreen.hpp"
#include "render/renderer.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/constants.hpp>

namespace beamfork {

inline constexpr PictureSize small{.width = 320, .height = 240};

using Pixel = std::array<std::uint8_t, 4>;

/// A context and a renderer; complaints of the driver fail the test at its end.
struct Studio {
    Result<OffscreenContext> context = OffscreenContext::create();
    std::optional<Renderer> renderer;
    std::uint64_t revision = 0;

    Studio() {
        REQUIRE_MESSAGE(context.has_value(), (context ? "" : to_text(context.error())));
        auto made = Renderer::create();
        REQUIRE_MESSAGE(made.has_value(), (made ? "" : to_text(made.error())));
        renderer.emplace(*std::move(made));
    }
    Studio(const Studio&) = delete;
    Studio& operator=(const Studio&) = delete;
    ~Studio() {
        for (const std::string& complaint : renderer->take_errors())
            FAIL_CHECK(complaint);
    }

    Image draw(Frame frame,
               const Camera& camera,
               const ViewOptions& options = {},
               const PictureSize& size = small) {
        frame.revision = ++revision;
        renderer->upload(frame);
        const auto drawn = renderer->draw(camera, options, size);
        REQUIRE(drawn.has_value());
        CHECK(*drawn != 0);
        return renderer->read_pixels();
    }
};

/// Seen from the side: light from left to right, one pixel about 0.67 mm.
inline Camera side_camera() { return {.target = {0, 0, 0}, .distance_mm = 300}; }

inline Pixel seen_at(const Image& image, const Camera& camera, glm::vec3 world) {
    const auto pixel =
        project(camera, world, {static_cast<float>(image.width), static_cast<float>(image.height)});
    REQUIRE(pixel.has_value());
    return image.at(static_cast<int>(pixel->x), static_cast<int>(pixel->y));
}

inline int brightness(const Pixel& pixel) { return pixel[0] + pixel[1] + pixel[2]; }

/// In steps of 0..255.
inline double encoded(double linear) { return 255 * srgb_from_linear(linear); }

inline void check_colour(const Pixel& actual, const Rgb& linear) {
    // The shader's curve is within 0.003 of the standard (0.8 steps); rounding and dither add one.
    for (int i = 0; i < 3; ++i)
        CHECK(near(actual[static_cast<std::size_t>(i)], encoded(linear[i]), 2));
}

inline ImageDisc
disc_towards_side(glm::vec3 centre, float radius, ColourRole role, float light = 1) {
    ImageDisc disc;
    disc.centre = centre;
    disc.right = {0, 0, radius};
    disc.up = {0, radius, 0};
    disc.role = role;
    disc.size = 8;
    disc.light.assign(64, light);
    return disc;
}

inline void add_quad(Mesh& mesh, const std::array<glm::vec3, 4>& corners) {
    const glm::vec3 normal =
        glm::normalize(glm::cross(corners[1] - corners[0], corners[2] - corners[0]));
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (const glm::vec3& corner : corners)
        mesh.vertices.push_back({corner, normal});
    mesh.indices.insert(mesh.indices.end(),
                        {first, first + 1, first + 2, first, first + 2, first + 3});
}

inline Mesh box(glm::vec3 low, glm::vec3 high, Finish finish) {
    Mesh mesh;
    mesh.finish = finish;
    mesh.tint = finish == Finish::glass ? Rgb{0.4F, 0.65F, 0.8F} : Rgb{0.6F};
    const auto at = [&](int x, int y, int z) {
        return glm::vec3(x != 0 ? high.x : low.x, y != 0 ? high.y : low.y, z != 0 ? high.z : low.z);
    };
    add_quad(mesh, {at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)});
    add_quad(mesh, {at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)});
    add_quad(mesh, {at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)});
    add_quad(mesh, {at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)});
    add_quad(mesh, {at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)});
    add_quad(mesh, {at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)});
    return mesh;
}

/// A closed tube about z from -60 to 60 mm.
inline Mesh tube(float outer, float inner) {
    Mesh mesh;
    mesh.is_shell = true;
    mesh.tint = Rgb{0.2F, 0.25F, 0.3F};
    const auto wall = [&mesh](float r0, float z0, float r1, float z1) {
        constexpr std::uint32_t corners = 48;
        const glm::vec2 normal = glm::normalize(glm::vec2(z1 - z0, r0 - r1));
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (std::uint32_t i = 0; i < corners; ++i) {
            const float angle = glm::two_pi<float>() * static_cast<float>(i) / corners;
            const glm::vec3 out(std::cos(angle), std::sin(angle), 0);
            const glm::vec3 n = normal.x * out + glm::vec3(0, 0, normal.y);
            mesh.vertices.push_back({r0 * out + glm::vec3(0, 0, z0), n});
            mesh.vertices.push_back({r1 * out + glm::vec3(0, 0, z1), n});
            const std::uint32_t a = first + 2 * i;
            const std::uint32_t b = first + 2 * ((i + 1) % corners);
            mesh.indices.insert(mesh.indices.end(), {a, b, b + 1, a, b + 1, a + 1});
        }
    };
    wall(outer, -60, outer, 60);
    wall(outer, 60, inner, 60);
    wall(inner, 60, inner, -60);
    wall(inner, -60, outer, -60);
    return mesh;
}

/// Rays that converge from a round opening at z = -90 to a point at z = 60.
inline void add_fan(Frame& frame, int rays) {
    frame.ray_count = rays;
    for (int i = 0; i < rays; ++i) {
        const float radius =
            30 * std::sqrt((static_cast<float>(i) + 0.5F) / static_cast<float>(rays));
        const float angle = 2.4F * static_cast<float>(i);
        frame.light.push_back(
            {{radius * std::cos(angle), radius * std::sin(angle), -90}, {0, 0, 60}});
    }
}

/// Two prisms of glass one behind the other in a fan of light.
inline Frame prisms_in_light() {
    Frame frame;
    frame.meshes = {box({-20, -20, -20}, {0, 20, 10}, Finish::glass),
                    box({2, -15, 0}, {20, 15, 30}, Finish::glass),
                    box({5, -25, -40}, {15, -5, 20}, Finish::glass)};
    add_fan(frame, 60);
    return frame;
}

}  // namespace beamfork
