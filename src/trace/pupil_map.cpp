#include "trace/pupil_map.hpp"

#include <algorithm>
#include <cmath>

#include "trace/bundle_kernel.hpp"
#include "trace/pupil_kernel.hpp"

namespace beamfork {

namespace {

constexpr std::size_t ray_count = pupil_node_count * fields_at_once;
static_assert(ray_count <= RayBlock::capacity && ray_count % RayBlock::granule == 0);

NodeMeetings meetings_of(RayTrail& trail, std::size_t surface) {
    return {{trail.column(surface, RayTrail::x), trail.column(surface, RayTrail::y),
             trail.column(surface, RayTrail::z)},
            {trail.column(surface, RayTrail::kx), trail.column(surface, RayTrail::ky),
             trail.column(surface, RayTrail::kz)}};
}

NodeMeetings meetings_of(const RoofMeetings& roof, RoofHit hit) {
    const auto& at = roof.of(hit);
    return {{at[0].data(), at[1].data(), at[2].data()},
            {roof.along[0].data(), roof.along[1].data(), roof.along[2].data()}};
}

// By how much farther a roof's first face is than its second: told as a bound that lets light pass where it is.
PupilEdge roof_order() {
    PupilEdge edge;
    edge.u.along = {1, 0, 0};
    return edge;
}
NodeMeetings order_of(const RoofMeetings& roof) {
    const double* const column = roof.swapped_by.data();
    return {{column, column, column}, {}};
}

}  // namespace

struct PupilMap::Impl {
    const Train& train;
    StraightPath straight;
    PupilEdges edges;
    BlockTracer trace_block;
    CubicFit fit = cubic_fit();
    PupilNodes nodes = pupil_nodes();
    RayBlock block{};
    RayTrail trail;
    std::vector<BoundLanes> lanes{};  ///< of each edge
    std::vector<BoundLanes> gates{};  ///< of each roof: u >= 0 where it is met in the other order
    std::vector<RoofMeetings> roofs{};
    std::array<bool, fields_at_once> is_known{};

    void start_rays(std::span<const FieldSlope> fields);
    void judge_nodes();
};

void PupilMap::Impl::start_rays(std::span<const FieldSlope> fields) {
    constexpr double ahead = 10;  // of the telescope's first opening, as all rays start
    const double n = straight.first_index;
    for (std::size_t field = 0; field < fields_at_once; ++field) {
        const FieldSlope slope = fields[std::min(field, fields.size() - 1)];
        for (std::size_t node = 0; node < pupil_node_count; ++node) {
            const Ray ray = ray_into(train, slope, nodes[node], ahead);
            const std::size_t i = node * fields_at_once + field;
            block.x[i] = ray.origin.x;
            block.y[i] = ray.origin.y;
            block.z[i] = ray.origin.z;
            block.kx[i] = n * ray.direction.x;
            block.ky[i] = n * ray.direction.y;
            block.kz[i] = n * ray.direction.z;
        }
    }
    constexpr double endless = std::numeric_limits<double>::infinity();
    std::fill_n(block.path.begin(), ray_count, 0);
    std::fill_n(block.end.begin(), ray_count, endless);
    std::fill_n(block.grazing.begin(), ray_count, endless);
    block.count = ray_count;
}

void PupilMap::Impl::judge_nodes() {
    is_known.fill(true);
    for (std::size_t i = 0; i < ray_count; ++i) {
        const bool is_missed =
            std::isfinite(block.end[i])
            && static_cast<std::uint32_t>(block.end[i]) % fates_per_surface == code_missed;
        if (is_missed || !(block.grazing[i] >= near_grazing)) is_known[i % fields_at_once] = false;
    }
}

std::optional<PupilMap> PupilMap::of(const Train& train, const EyePath& path) {
    auto straight = straightened(path, primary_wavelength, PlateForm::never);
    if (!straight) return std::nullopt;
    auto edges = pupil_edges(*straight);
    if (!edges) return std::nullopt;
    auto impl = std::make_unique<Impl>(Impl{.train = train,
                                            .straight = *std::move(straight),
                                            .edges = *std::move(edges),
                                            .trace_block = instruction_sets().front().trace,
                                            .trail = {path.surfaces.size(), ray_count}});
    impl->lanes.resize(impl->edges.edges.size());
    impl->gates.resize(impl->edges.roofs.size());
    impl->roofs.resize(impl->edges.roofs.size());
    return PupilMap(std::move(impl));
}

PupilMap::PupilMap(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
PupilMap::PupilMap(PupilMap&&) noexcept = default;
PupilMap::~PupilMap() = default;

void PupilMap::look_from(std::span<const FieldSlope> fields) {
    BEAMFORK_EXPECTS(!fields.empty() && fields.size() <= fields_at_once);
    Impl& my = *impl_;
    my.start_rays(fields);
    my.trace_block(my.straight.sections, my.block, &my.trail);
    my.judge_nodes();
    for (std::size_t i = 0; i < my.edges.roofs.size(); ++i) {
        meet_roof(my.edges.roofs[i], my.trail, ray_count, my.roofs[i]);
        fit_bound(roof_order(), order_of(my.roofs[i]), my.fit, my.gates[i]);
    }
    for (std::size_t i = 0; i < my.edges.edges.size(); ++i) {
        const PupilEdge& edge = my.edges.edges[i];
        const NodeMeetings met = edge.roof ? meetings_of(my.roofs[*edge.roof], edge.hit)
                                           : meetings_of(my.trail, edge.surface);
        fit_bound(edge, met, my.fit, my.lanes[i]);
    }
}

bool PupilMap::is_known(std::size_t field) const { return impl_->is_known.at(field); }

void PupilMap::bounds_of(std::size_t field, std::vector<PupilBound>& found) const {
    found.clear();
    for (std::size_t i = 0; i < impl_->lanes.size(); ++i) {
        const BoundLanes& lanes = impl_->lanes[i];
        if (lanes.nearest.at(field) >= 0) continue;
        const PupilEdge& edge = impl_->edges.edges[i];
        PupilBound& bound = found.emplace_back();
        bound.surface = edge.surface;
        bound.is_leak = edge.is_leak;
        bound.shape = edge.shape;
        bound.u = lanes.u.of(field);
        if (edge.shape != PupilBound::Shape::half) bound.v = lanes.v.of(field);
        if (!edge.roof) continue;
        const BoundLanes& order = impl_->gates[*edge.roof];
        PupilCubic gate;
        gate.terms[0] = 1;  // met in the other order everywhere: the cubic may not be there
        if (order.nearest.at(field) < 0) gate = order.u.of(field);
        const bool is_swapped =
            edge.hit == RoofHit::second_first || edge.hit == RoofHit::first_second;
        if (!is_swapped) {
            for (double& term : gate.terms)
                term = -term;
        }
        bound.gate = gate;
    }
}

}  // namespace beamfork
