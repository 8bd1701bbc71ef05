#include "trace/pupil_map.hpp"

#include <algorithm>
#include <cmath>

#include "trace/bundle_kernel.hpp"
#include "trace/pupil_edges.hpp"

namespace beamfork {

namespace {

constexpr std::size_t ray_count = pupil_node_count * fields_at_once;
static_assert(ray_count <= RayBlock::capacity && ray_count % RayBlock::granule == 0);

// Where the rays met one plane and how they came, in the straightened path.
struct Meetings {
    std::array<const double*, 3> at{};
    std::array<const double*, 3> along{};
};

Meetings meetings_of(RayTrail& trail, std::size_t surface) {
    return {{trail.column(surface, RayTrail::x), trail.column(surface, RayTrail::y),
             trail.column(surface, RayTrail::z)},
            {trail.column(surface, RayTrail::kx), trail.column(surface, RayTrail::ky),
             trail.column(surface, RayTrail::kz)}};
}

double* numbers(NodeLanes& lanes) { return lanes.front().data(); }

void measure(const Gauge& gauge, const Meetings& met, NodeLanes& values) {
    double* const to = numbers(values);
    const Direction& a = gauge.along;
    if (gauge.of == Gauge::Of::place) {
        for (std::size_t i = 0; i < ray_count; ++i)
            to[i] = a.x * met.at[0][i] + a.y * met.at[1][i] + a.z * met.at[2][i] - gauge.from;
        return;
    }
    const double sign = gauge.of == Gauge::Of::more_than ? 1 : -1;
    for (std::size_t i = 0; i < ray_count; ++i) {
        const double part =
            std::abs(a.x * met.along[0][i] + a.y * met.along[1][i] + a.z * met.along[2][i]);
        to[i] = sign * (part - gauge.from);
    }
}

Meetings meetings_of(const RoofMeetings& roof, RoofHit hit) {
    const auto& at = roof.of(hit);
    return {{at[0].data(), at[1].data(), at[2].data()},
            {roof.along[0].data(), roof.along[1].data(), roof.along[2].data()}};
}

// What a bound's values at the nodes say about the whole pupil, made wider: the outermost nodes stand apart, and
// what is not linear may bulge between them.
constexpr double beyond_nodes = 1.15;

void judge_half(const NodeLanes& u, FieldLanes& nearest) {
    FieldLanes lowest = u[0];
    for (const FieldLanes& node : u) {
        for (std::size_t field = 0; field < fields_at_once; ++field)
            lowest[field] = std::min(lowest[field], node[field]);
    }
    for (std::size_t field = 0; field < fields_at_once; ++field)
        nearest[field] = u[0][field] - beyond_nodes * (u[0][field] - lowest[field]);
}

void judge_round(const NodeLanes& u, const NodeLanes& v, bool is_block, FieldLanes& nearest) {
    FieldLanes spread{};
    for (std::size_t node = 0; node < pupil_node_count; ++node) {
        for (std::size_t field = 0; field < fields_at_once; ++field) {
            const double x = u[node][field] - u[0][field];
            const double y = v[node][field] - v[0][field];
            spread[field] = std::max(spread[field], x * x + y * y);
        }
    }
    for (std::size_t field = 0; field < fields_at_once; ++field) {
        const double middle = std::sqrt(u[0][field] * u[0][field] + v[0][field] * v[0][field]);
        const double reach = beyond_nodes * std::sqrt(spread[field]);
        nearest[field] = (is_block ? middle - 1 : 1 - middle) - reach;
    }
}

}  // namespace

struct PupilMap::Impl {
    struct EdgeLanes {
        CubicLanes u, v;
        FieldLanes nearest{};  ///< below 0 where the bound may take light
    };

    const Train& train;
    StraightPath straight;
    PupilEdges edges;
    BlockTracer trace_block;
    CubicFitter fitter{};
    PupilNodes nodes = pupil_nodes();
    RayBlock block{};
    RayTrail trail;
    std::vector<EdgeLanes> lanes{};      ///< of each edge
    std::vector<CubicLanes> gates{};     ///< of each roof: >= 0 where it is met in the other order
    std::vector<RoofMeetings> roofs{};
    std::array<bool, fields_at_once> is_known{};
    NodeLanes u{}, v{};

    void start_rays(std::span<const FieldSlope> fields);
    void judge_nodes();
    void fit_edge(const PupilEdge& edge, EdgeLanes& to);
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

void PupilMap::Impl::fit_edge(const PupilEdge& edge, EdgeLanes& to) {
    const Meetings met =
        edge.roof ? meetings_of(roofs[*edge.roof], edge.hit) : meetings_of(trail, edge.surface);
    measure(edge.u, met, u);
    if (edge.shape == PupilBound::Shape::half) {
        judge_half(u, to.nearest);
    } else {
        measure(edge.v, met, v);
        judge_round(u, v, edge.shape == PupilBound::Shape::block, to.nearest);
    }
    // Most openings are wide: nothing more is asked of them.
    if (std::all_of(to.nearest.begin(), to.nearest.end(), [](double near) { return near >= 0; }))
        return;
    fitter.fit(u, to.u);
    if (edge.shape != PupilBound::Shape::half) fitter.fit(v, to.v);
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
    my.trace_block(my.straight, my.block, &my.trail);
    my.judge_nodes();
    for (std::size_t i = 0; i < my.edges.roofs.size(); ++i) {
        meet_roof(my.edges.roofs[i], my.trail, ray_count, my.roofs[i]);
        std::copy_n(my.roofs[i].swapped_by.begin(), ray_count, numbers(my.u));
        my.fitter.fit(my.u, my.gates[i]);
    }
    for (std::size_t i = 0; i < my.edges.edges.size(); ++i)
        my.fit_edge(my.edges.edges[i], my.lanes[i]);
}

bool PupilMap::is_known(std::size_t field) const { return impl_->is_known.at(field); }

void PupilMap::bounds_of(std::size_t field, std::vector<PupilBound>& found) const {
    found.clear();
    for (std::size_t i = 0; i < impl_->lanes.size(); ++i) {
        const Impl::EdgeLanes& lanes = impl_->lanes[i];
        if (lanes.nearest.at(field) >= 0) continue;
        const PupilEdge& edge = impl_->edges.edges[i];
        PupilBound& bound = found.emplace_back();
        bound.surface = edge.surface;
        bound.is_leak = edge.is_leak;
        bound.shape = edge.shape;
        bound.u = lanes.u.of(field);
        if (edge.shape != PupilBound::Shape::half) bound.v = lanes.v.of(field);
        if (!edge.roof) continue;
        PupilCubic gate = impl_->gates[*edge.roof].of(field);
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
