#include "embree_rival.hpp"

#ifdef BEAMFORK_EMBREE

#include <cmath>

#include <embree3/rtcore.h>

namespace bench {

namespace {

constexpr int lanes = 16;
constexpr float half_width = 40;  // of an opening with no edge, mm

struct Face {
    glm::vec3 normal{0, 0, 1}, centre{0, 0, 0};
    SurfaceKind kind = SurfaceKind::stop;
    float ratio = 1, index = 1, focal_length = 0;
};

class Library final : public EmbreeRival {
public:
    Library(const EyePath& path, const RayBundle& bundle)
        : bundle_(bundle),
          device_(rtcNewDevice("threads=1")),
          scene_(rtcNewScene(device_)),
          last_(path.surfaces.back().world_from_surface),
          x_(bundle.size()),
          y_(bundle.size()),
          path_(bundle.size()),
          end_(bundle.size()) {
        for (const PlacedSurface& surface : path.surfaces)
            add(surface);
        rtcCommitScene(scene_);
        rtcInitIntersectContext(&context_);
        context_.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
    }
    ~Library() override {
        rtcReleaseScene(scene_);
        rtcReleaseDevice(device_);
    }
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;

    void trace(int packet) override {
        for (std::size_t i = 0; i < bundle_.size(); i += lanes)
            trace_sixteen(i, static_cast<int>(std::min<std::size_t>(lanes, bundle_.size() - i)),
                          packet);
    }
    [[nodiscard]] bool agrees(const BundleEnds& ends) const override {
        std::size_t same = 0;
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const bool reached = end_[i] == faces_.size();
            if (reached != ends.reached(i)) continue;
            same += !reached || glm::distance(ends.spot(i), {x_[i], y_[i]}) < 0.01 ? 1 : 0;
        }
        return static_cast<double>(same) > 0.98 * static_cast<double>(ends.size());
    }

private:
    void add(const PlacedSurface& surface) {
        const Pose& pose = surface.world_from_surface;
        float x = half_width;
        float y = half_width;
        if (const auto* circle = std::get_if<Circle>(&surface.aperture))
            x = y = static_cast<float>(circle->radius);
        if (const auto* polygon = std::get_if<Polygon>(&surface.aperture)) {
            x = static_cast<float>(std::abs(polygon->corners[0].x));
            y = static_cast<float>(std::abs(polygon->corners[0].y));
        }
        RTCGeometry quad = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_QUAD);
        auto* corners = static_cast<float*>(rtcSetNewGeometryBuffer(
            quad, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), 4));
        auto* order = static_cast<unsigned*>(rtcSetNewGeometryBuffer(
            quad, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT4, 4 * sizeof(unsigned), 1));
        const std::array<glm::dvec2, 4> signs{{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}};
        for (unsigned i = 0; i < 4; ++i) {
            const glm::vec3 corner(pose.point_out({signs[i].x * x, signs[i].y * y, 0}));
            std::copy(&corner.x, &corner.x + 3, corners + 3 * i);
            order[i] = i;
        }
        rtcCommitGeometry(quad);
        rtcAttachGeometryByID(scene_, quad, static_cast<unsigned>(faces_.size()));
        rtcReleaseGeometry(quad);
        const double before = surface.index_before[primary_wavelength];
        faces_.push_back({glm::vec3(pose.z()), glm::vec3(pose.origin), surface.kind,
                          static_cast<float>(before / surface.index_after[primary_wavelength]),
                          static_cast<float>(before),
                          static_cast<float>(surface.focal_length[primary_wavelength])});
    }

    struct Lanes {
        alignas(64) std::array<int, lanes> valid;
        RTCRayHit16 hits;
        std::array<float, lanes> path;
    };

    void trace_sixteen(std::size_t first, int count, int packet) {
        Lanes now;
        for (int i = 0; i < lanes; ++i) {
            const std::size_t ray = first + static_cast<std::size_t>(std::min(i, count - 1));
            now.valid[i] = i < count ? -1 : 0;
            RTCRay16& to = now.hits.ray;
            to.org_x[i] = static_cast<float>(bundle_.x[ray]);
            to.org_y[i] = static_cast<float>(bundle_.y[ray]);
            to.org_z[i] = static_cast<float>(bundle_.z[ray]);
            to.dir_x[i] = static_cast<float>(bundle_.dx[ray]);
            to.dir_y[i] = static_cast<float>(bundle_.dy[ray]);
            to.dir_z[i] = static_cast<float>(bundle_.dz[ray]);
            to.time[i] = 0;
            to.mask[i] = ~0U;
            to.flags[i] = 0;
            now.path[i] = static_cast<float>(bundle_.path[ray]);
            if (i < count) end_[ray] = faces_.size();
        }
        for (std::size_t step = 0; step < faces_.size(); ++step) {
            for (int i = 0; i < lanes; ++i) {
                now.hits.ray.tnear[i] = step == 0 ? 0 : 1e-3F;
                now.hits.ray.tfar[i] = 1e6F;
                now.hits.hit.geomID[i] = RTC_INVALID_GEOMETRY_ID;
                now.hits.hit.instID[0][i] = RTC_INVALID_GEOMETRY_ID;
            }
            if (packet == lanes) {
                rtcIntersect16(now.valid.data(), scene_, &context_, &now.hits);
            } else {
                intersect_one_by_one(now);
            }
            for (int i = 0; i < lanes; ++i)
                act(now, i, step, first);
        }
        for (int i = 0; i < count; ++i)
            note_spot(now, i, first + static_cast<std::size_t>(i));
    }

    void intersect_one_by_one(Lanes& now) {
        for (int i = 0; i < lanes; ++i) {
            if (now.valid[i] == 0) continue;
            const RTCRay16& from = now.hits.ray;
            RTCRayHit one;
            one.ray = {from.org_x[i],
                       from.org_y[i],
                       from.org_z[i],
                       from.tnear[i],
                       from.dir_x[i],
                       from.dir_y[i],
                       from.dir_z[i],
                       0,
                       from.tfar[i],
                       ~0U,
                       0,
                       0};
            one.hit.geomID = RTC_INVALID_GEOMETRY_ID;
            one.hit.instID[0] = RTC_INVALID_GEOMETRY_ID;
            rtcIntersect1(scene_, &context_, &one);
            now.hits.ray.tfar[i] = one.ray.tfar;
            now.hits.hit.geomID[i] = one.hit.geomID;
        }
    }

    void act(Lanes& now, int i, std::size_t step, std::size_t first) {
        if (now.valid[i] == 0) return;
        RTCRay16& ray = now.hits.ray;
        if (now.hits.hit.geomID[i] != step) {
            now.valid[i] = 0;
            end_[first + static_cast<std::size_t>(i)] = step;
            return;
        }
        const Face& face = faces_[step];
        glm::vec3 along{ray.dir_x[i], ray.dir_y[i], ray.dir_z[i]};
        glm::vec3 at = glm::vec3{ray.org_x[i], ray.org_y[i], ray.org_z[i]} + ray.tfar[i] * along;
        now.path[i] += face.index * ray.tfar[i];
        const float cosine = glm::dot(along, face.normal);
        switch (face.kind) {
        case SurfaceKind::refraction: {
            const float sine_squared = face.ratio * face.ratio * (1 - cosine * cosine);
            const float after = std::copysign(std::sqrt(1 - sine_squared), cosine);
            along = face.ratio * along + (after - face.ratio * cosine) * face.normal;
            break;
        }
        case SurfaceKind::mirror:
        case SurfaceKind::total_reflection: along -= 2 * cosine * face.normal; break;
        case SurfaceKind::objective: along = sharply_focused(face, at, along); break;
        case SurfaceKind::thin_lens: {
            const glm::vec3 bent = along / cosine - (at - face.centre) / face.focal_length;
            along = glm::normalize(bent);
            break;
        }
        default: break;
        }
        ray.org_x[i] = at.x;
        ray.org_y[i] = at.y;
        ray.org_z[i] = at.z;
        ray.dir_x[i] = along.x;
        ray.dir_y[i] = along.y;
        ray.dir_z[i] = along.z;
    }

    // From the place on the sphere about the image, brought back to the lens's plane along the ray.
    static glm::vec3 sharply_focused(const Face& face, glm::vec3& at, glm::vec3 along) {
        const float f = face.focal_length;
        const glm::vec3 image{f * along.x / along.z, f * along.y / along.z, f};
        const glm::vec3 leaving{at.x, at.y, f - std::sqrt(f * f - at.x * at.x - at.y * at.y)};
        at = leaving;
        return glm::normalize(image - leaving);
    }

    void note_spot(const Lanes& now, int i, std::size_t ray) {
        const RTCRay16& r = now.hits.ray;
        const Point at = last_.point_in({r.org_x[i], r.org_y[i], r.org_z[i]});
        x_[ray] = at.x;
        y_[ray] = at.y;
        path_[ray] = now.path[i];
    }

    const RayBundle& bundle_;
    RTCDevice device_;
    RTCScene scene_;
    RTCIntersectContext context_;
    Pose last_;
    std::vector<Face> faces_;
    std::vector<double> x_, y_, path_;
    std::vector<std::size_t> end_;
};

}  // namespace

std::unique_ptr<EmbreeRival> make_embree_rival(const EyePath& path, const RayBundle& bundle) {
    return std::make_unique<Library>(path, bundle);
}

}  // namespace bench

#else

namespace bench {

std::unique_ptr<EmbreeRival> make_embree_rival(const EyePath&, const RayBundle&) { return nullptr; }

}  // namespace bench

#endif
