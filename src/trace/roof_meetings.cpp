#include "trace/roof_meetings.hpp"

namespace beamfork {

namespace {

struct StraightRay {
    Point at{0.0};
    Direction along{0.0};
    [[nodiscard]] double distance_to(const StraightPlane& plane) const {
        return (plane.offset - glm::dot(at, plane.normal)) / glm::dot(along, plane.normal);
    }
};

StraightRay ray_before(const RoofFaces& roof, RayTrail& trail, std::size_t lane) {
    const auto number = [&](std::size_t surface, RayTrail::Number which) {
        return trail.column(surface, which)[lane];
    };
    const std::size_t face = roof.first.surface;
    const StraightRay ray{
        {number(face, RayTrail::x), number(face, RayTrail::y), number(face, RayTrail::z)},
        {number(face, RayTrail::kx), number(face, RayTrail::ky), number(face, RayTrail::kz)}};
    if (number(face, RayTrail::t) <= number(roof.second.surface, RayTrail::t)) return ray;
    const Isometry back =
        mirror_image(roof.second_first.offset * roof.second_first.normal, roof.second_first.normal);
    return {back.point(ray.at), back.direction(ray.along)};
}

void set(std::array<std::vector<double>, 3>& columns, std::size_t lane, const glm::dvec3& value) {
    for (std::size_t axis = 0; axis < 3; ++axis)
        columns.at(axis)[lane] = value[static_cast<glm::length_t>(axis)];
}

void resize(std::array<std::vector<double>, 3>& columns, std::size_t rays) {
    for (auto& column : columns)
        column.resize(rays);
}

}  // namespace

void meet_roof(const RoofFaces& roof, RayTrail& trail, std::size_t rays, RoofMeetings& met) {
    resize(met.along, rays);
    for (auto& columns : met.at)
        resize(columns, rays);
    met.swapped_by.resize(rays);
    const std::array planes{&roof.first, &roof.second, &roof.second_first, &roof.first_second};
    for (std::size_t lane = 0; lane < rays; ++lane) {
        const StraightRay ray = ray_before(roof, trail, lane);
        set(met.along, lane, ray.along);
        for (std::size_t i = 0; i < planes.size(); ++i)
            set(met.at.at(i), lane, ray.at + ray.distance_to(*planes.at(i)) * ray.along);
        met.swapped_by[lane] = ray.distance_to(roof.first) - ray.distance_to(roof.second_first);
    }
}

}  // namespace beamfork
