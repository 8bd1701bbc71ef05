// The fast tracer against the scalar reference and against a general ray-tracing library, on one train of 20 surfaces, and
// how its cost grows. Every answer is checked before it is timed.
#include <stdexcept>
#include <thread>

#include "embree_rival.hpp"
#include "port_speed.hpp"
#include "rounds.hpp"
#include "trace/bundle_kernel.hpp"
#include "twenty_surfaces.hpp"

using namespace bench;

namespace {

constexpr std::size_t field_points = 61;
constexpr int rays_per_point = 256;

void require(bool holds, const std::string& what) {
    if (!holds) throw std::runtime_error(what);
}

// The reference into the same columns.
void trace_alone(const EyePath& path, const RayBundle& bundle, BundleEnds& ends) {
    const Pose& frame = path.surfaces.back().world_from_surface;
    for (std::size_t i = 0; i < bundle.size(); ++i) {
        const RayEnd end = trace_ray(path, bundle.ray(i), primary_wavelength);
        const Point at = frame.point_in(end.ray.origin);
        ends.fate[i] = end.fate;
        ends.surface[i] = static_cast<std::uint32_t>(end.surface);
        ends.x[i] = at.x;
        ends.y[i] = at.y;
        ends.path[i] = end.ray.path;
    }
}

void check_same(const BundleEnds& ends, const BundleEnds& expected, const std::string& who) {
    for (std::size_t i = 0; i < ends.size(); ++i) {
        require(ends.fate[i] == expected.fate[i] && ends.surface[i] == expected.surface[i],
                who + " ends a ray otherwise");
        if (!ends.reached(i)) continue;
        require(std::abs(ends.path[i] - expected.path[i]) < 1e-9, who + " has another path");
        require(glm::distance(ends.spot(i), expected.spot(i)) < 1e-9, who + " has another spot");
    }
}

double interactions(const EyePath& path, const RayBundle& bundle) {
    return static_cast<double>(path.surfaces.size() * bundle.size());
}

void tell_rates(benchmark::State& state, const std::vector<Variant>& variants, double count) {
    for (const Variant& variant : variants)
        state.counters[variant.name + "_M/s"] = count / median(variant.seconds) / 1e6;
}

struct Contest {
    EyePath path;
    RayBundle bundle = light(field_points, rays_per_point);
    BundleEnds ends;
    std::vector<BundleTracer> tracers;
    std::vector<Variant> variants;

    explicit Contest(double tilt) : path(twenty_surfaces(tilt)) {
        require(path.surfaces.size() == 20, "the train must have 20 surfaces");
        tracers.reserve(2 * instruction_sets().size());
        ends = BundleTracer(path, primary_wavelength).trace(bundle);
        trace_alone(path, bundle, ends);
        variants.push_back({"reference", [this] { trace_alone(path, bundle, ends); }});
        const BundleEnds expected = ends;
        for (std::size_t set = 0; set < instruction_sets().size(); ++set) {
            add("", {PlateForm::never, set}, expected);
            if (tilt == 0) add("plates_", {PlateForm::where_exact, set}, expected);
        }
    }
    Contest(const Contest&) = delete;
    Contest& operator=(const Contest&) = delete;

private:
    void add(const std::string& kind, TracerForm form, const BundleEnds& expected) {
        const BundleTracer& tracer = tracers.emplace_back(path, primary_wavelength, form);
        const std::string name = kind + instruction_sets()[form.instruction_set].name;
        tracer.trace(bundle, ends);
        check_same(ends, expected, name);
        variants.push_back({name, [this, &tracer] { tracer.trace(bundle, ends); }});
    }
};

// "<instructions>_x": as many times the reference's speed; "plates_" in the form for square faces.
void against_reference(benchmark::State& state, double tilt) {
    Contest contest(tilt);
    run_rounds(state, contest.variants);
    tell_rates(state, contest.variants, interactions(contest.path, contest.bundle));
}

// "tracer_x": as many times the library's speed on the same surfaces, 1 and 16 rays at a time.
void against_library(benchmark::State& state) {
    const EyePath path = twenty_surfaces();
    const RayBundle bundle = light(field_points, rays_per_point);
    const BundleTracer general(path, primary_wavelength, {PlateForm::never, 0});
    const BundleTracer plates(path, primary_wavelength);
    BundleEnds ends = general.trace(bundle);
    auto rival = make_embree_rival(path, bundle);
    if (!rival) {
        state.SkipWithError("built without libembree-dev");
        return;
    }
    for (const int packet : {1, 16}) {
        rival->trace(packet);
        require(rival->agrees(ends), "the library must agree within single precision");
    }
    std::vector<Variant> variants{{"library16", [&] { rival->trace(16); }},
                                  {"library1", [&] { rival->trace(1); }},
                                  {"tracer", [&] { general.trace(bundle, ends); }},
                                  {"plates", [&] { plates.trace(bundle, ends); }}};
    run_rounds(state, variants);
    for (const std::string form : {"tracer", "plates"}) {
        state.counters[form + "_against_library1_x"] =
            state.counters[form + "_x"] / state.counters["library1_x"];
    }
    tell_rates(state, variants, interactions(path, bundle));
}

// Share of what the processor's units would allow: the least products, divisions and roots each surface needs,
// at the speeds measured beside it.
void of_what_ports_allow(benchmark::State& state) {
    const EyePath path = twenty_surfaces(0.5);
    const RayBundle bundle = light(field_points, rays_per_point);
    const BundleTracer general(path, primary_wavelength, {PlateForm::never, 0});
    BundleEnds ends = general.trace(bundle);
    const double floor_operations = static_cast<double>(bundle.size());
    std::vector<double> shares;
    std::vector<Variant> variants{{"products", [] { spend_products(); }},
                                  {"divisions", [] { spend_divisions(); }},
                                  {"roots", [] { spend_roots(); }},
                                  {"tracer", [&] { general.trace(bundle, ends); }}};
    run_rounds(state, variants);
    for (std::size_t i = 0; i < variants[0].seconds.size(); ++i) {
        const PortTimes each{variants[0].seconds[i] / spent_numbers,
                             variants[1].seconds[i] / spent_numbers,
                             variants[2].seconds[i] / spent_numbers};
        shares.push_back(least_time(path, each) * floor_operations / variants[3].seconds[i]);
    }
    state.counters["share_of_floor"] = median(shares);
}

// "two_x": two threads, each with half of the rays, against one with all.
void two_threads(benchmark::State& state) {
    const EyePath path = twenty_surfaces();
    const BundleTracer tracer(path, primary_wavelength, {PlateForm::never, 0});
    const RayBundle all = light(field_points, rays_per_point);
    std::array<RayBundle, 2> halves;
    for (std::size_t i = 0; i < all.size(); ++i)
        halves[2 * i / all.size()].add(all.ray(i));
    BundleEnds whole;
    std::array<BundleEnds, 2> ends;
    constexpr int times = 16;  // so that starting a thread is little of it
    const auto work = [&](const RayBundle& bundle, BundleEnds& to) {
        for (int i = 0; i < times; ++i)
            tracer.trace(bundle, to);
    };
    const auto both = [&] {
        const std::jthread other([&] { work(halves[1], ends[1]); });
        work(halves[0], ends[0]);
    };
    std::vector<Variant> variants{{"one", [&] { work(all, whole); }}, {"two", both}};
    run_rounds(state, variants);
    require(whole.x[0] == ends[0].x[0] && whole.x.back() == ends[1].x.back(), "halves differ");
}

// Cost against that of the first: rays 1000, 4000, 16000; surfaces 20, 40, 80; field points 15, 61, 244.
void growth(benchmark::State& state) {
    std::vector<EyePath> paths;
    for (const std::size_t times : {1, 2, 4}) {
        EyePath path = twenty_surfaces();
        std::vector<PlacedSurface> stops(20 * (times - 1), path.surfaces[1]);
        path.surfaces.insert(path.surfaces.begin() + 1, stops.begin(), stops.end());
        paths.push_back(std::move(path));
    }
    std::vector<BundleTracer> tracers;
    for (const EyePath& path : paths)
        tracers.emplace_back(path, primary_wavelength, TracerForm{PlateForm::never, 0});
    std::vector<RayBundle> bundles;
    for (const int rays : {1000, 4000, 16000})
        bundles.push_back(light(1, rays));
    for (const std::size_t fields : {15, 61, 244})
        bundles.push_back(light(fields, 64));
    BundleEnds ends;
    std::vector<Variant> variants;
    const std::array names{"rays_1000", "rays_4000", "rays_16000",
                           "fields_15", "fields_61", "fields_244"};
    for (std::size_t i = 0; i < bundles.size(); ++i)
        variants.push_back({names[i], [&, i] { tracers[0].trace(bundles[i], ends); }});
    const std::array more{"stops_0", "stops_20", "stops_60"};
    for (std::size_t i = 0; i < tracers.size(); ++i)
        variants.push_back({more[i], [&, i] { tracers[i].trace(bundles[1], ends); }});
    run_rounds(state, variants);
    for (const Variant& variant : variants)
        state.counters[variant.name + "_us"] = median(variant.seconds) * 1e6;
}

}  // namespace

BENCHMARK_CAPTURE(against_reference, square, 0.0)->Iterations(21)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(against_reference, tilted, 0.5)->Iterations(21)->Unit(benchmark::kMillisecond);
BENCHMARK(against_library)->Iterations(21)->Unit(benchmark::kMillisecond);
BENCHMARK(of_what_ports_allow)->Iterations(21)->Unit(benchmark::kMillisecond);
BENCHMARK(two_threads)->Iterations(21)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(growth)->Iterations(21)->Unit(benchmark::kMillisecond);
