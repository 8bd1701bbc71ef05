#include "train/train.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

Millimetres near_target_shift(Millimetres focal_length, Millimetres distance) {
    return focal_length * (focal_length / (distance - focal_length));
}

UnstatedPlaces Train::unstated(std::size_t part) const {
    const auto found = std::find_if(light_paths.begin(), light_paths.end(),
                                    [&](const LightPath& path) { return path.part == part; });
    return found == light_paths.end() ? UnstatedPlaces{} : found->unstated;
}

namespace {

Result<PerWavelength> indices_of(const std::string& medium) {
    PerWavelength indices{1, 1, 1};
    if (medium.empty()) return indices;
    const Glass* glass = standard_catalogue().known(medium);
    if (glass == nullptr) return tl::make_unexpected(standard_catalogue().find(medium).error());
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        const auto index = refractive_index(*glass, traced_wavelengths[w]);
        if (!index) return tl::make_unexpected(index.error());
        indices[w] = *index;
    }
    return indices;
}

// Focal lengths at the traced wavelengths from the primary one and the focus shifts at F and C.
PerWavelength focal_lengths(const Surface& surface) {
    const double f = surface.focal_length;
    if (surface.kind != SurfaceKind::objective) return {f, f, f};
    return {f + surface.blue_shift, f, f + surface.red_shift};
}

// Walks one eye's light through the parts, keeping the frame, the axis and the medium it has reached.
class PathBuilder {
public:
    PathBuilder(Eye eye, bool axis_alone) : axis_alone_(axis_alone) {
        path_.eye = eye;
        constexpr std::size_t usual_count = 32;
        path_.steps.reserve(usual_count);
        if (!axis_alone) path_.surfaces.reserve(usual_count);
    }

    Result<LightPath> add(std::size_t index,
                          const Part& part,
                          PartLayout& layout,
                          bool behind_focuser,
                          Train& train) {
        if (role_of(part) == Role::telescope) {
            train.pupil_plane = layout.pupil_plane;
            train.light_enters = layout.light_enters;
        }
        const std::size_t first_step = path_.steps.size();
        keep_steps_ = behind_focuser;
        for (const Surface& surface : layout.surfaces) {
            if (axis_alone_ && is_opening(surface.kind)) continue;
            if (auto placed = place(index, surface); !placed)
                return tl::make_unexpected(placed.error());
        }
        LightPath light;
        light.part = index;
        light.end_air = layout.end_air;
        light.unstated = layout.unstated;
        light.beyond_stated = layout.beyond_stated;
        Pose exit = frame_ * layout.part_from_exit;
        advance_to(exit.origin, index, 0);
        double derived = 0;
        for (std::size_t i = first_step; i < path_.steps.size(); ++i) {
            derived += path_.steps[i].reduced();
            if (path_.steps[i].index[primary_wavelength] > 1) light.glass += path_.steps[i].length;
        }
        (path_.eye == Eye::left ? light.derived_left : light.derived_right) = derived;
        if (const auto stated = stated_light_path(part.body); stated && behind_focuser) {
            light.stated = stated->value;
            // One air space for both arms, as long as the left one needs: unequal arms stay unequal.
            const double in_left = derived_in_left(train, index).value_or(derived);
            exit.origin += exit.z() * (stated->value + layout.beyond_stated - in_left);
            advance_to(exit.origin, index, 0);
        }
        if (!axis_alone_)
            train.placed.push_back({index, path_.eye, frame_, exit, std::move(layout.bodies)});
        frame_ = exit;
        direction_ = exit.z();
        return light;
    }

    /// The last face, mirror or lens so far, as seen from the entry face of the part that comes next. It lies there at
    /// the farthest, also where a part's stated light path leaves its own glass no room.
    [[nodiscard]] LensNeighbour last_face() const {
        const double place = glm::dot(last_face_ - frame_.origin, frame_.z());
        return {last_face_part_, std::string(last_face_name_), std::min(place, 0.0)};
    }

    EyePath finish() {
        path_.world_from_field_stop = frame_;
        if (!axis_alone_) sort_between_faces();
        return std::move(path_);
    }

private:
    Result<void> place(std::size_t part, const Surface& surface) {
        const Pose stands = frame_ * surface.part_from_surface;
        PerWavelength after = medium_;
        if (surface.kind == SurfaceKind::refraction) {
            const auto indices = indices_of(surface.medium_after);
            if (!indices) return tl::make_unexpected(indices.error());
            after = *indices;
        }
        if (!axis_alone_) path_.surfaces.push_back(placed_surface(part, surface, stands, after));
        if (!is_opening(surface.kind)) {
            const bool is_lens = surface.kind == SurfaceKind::thin_lens;
            advance_to(stands.origin, part, is_lens ? surface.focal_length : 0);
            last_face_ = stands.origin;
            last_face_part_ = part;
            last_face_name_ = surface.name;
        }
        medium_ = after;
        if (surface.kind == SurfaceKind::mirror || surface.kind == SurfaceKind::total_reflection)
            direction_ = mirrored(direction_, stands.z());
        return {};
    }

    [[nodiscard]] PlacedSurface placed_surface(std::size_t part,
                                               const Surface& surface,
                                               const Pose& stands,
                                               const PerWavelength& after) const {
        PlacedSurface placed{surface.name, part, surface.kind, stands, surface.aperture};
        placed.index_before = medium_;
        placed.index_after = after;
        placed.focal_length = focal_lengths(surface);
        placed.coating = surface.coating;
        placed.is_roof = surface.is_roof;
        placed.axis_position = position_ + glm::dot(stands.origin - here_, direction_);
        placed.shape = surface.shape;
        placed.profile = surface.profile;
        return placed;
    }

    // What the left arm's path takes in this part; nothing while the left arm itself is built.
    static std::optional<double> derived_in_left(const Train& train, std::size_t part) {
        for (const LightPath& path : train.light_paths) {
            if (path.part == part) return path.derived_left;
        }
        return std::nullopt;
    }

    void advance_to(const Point& at, std::size_t part, double lens_focal_length) {
        const double length = glm::dot(at - here_, direction_);
        if (keep_steps_ && (length != 0 || lens_focal_length != 0)) {
            path_.steps.push_back({part, length, medium_, lens_focal_length, here_, at});
        }
        position_ += length;
        here_ = at;
    }

    // A nose or a front end may reach into the part before it: openings and lenses that share one air
    // space are met in the order of their place on the axis, whichever part they belong to.
    void sort_between_faces() {
        const auto is_face = [](const PlacedSurface& s) {
            return s.kind != SurfaceKind::stop && s.kind != SurfaceKind::thin_lens;
        };
        auto begin = path_.surfaces.begin();
        const auto last = path_.surfaces.end() - 1;  // the field stop stays last
        while (begin != last) {
            const auto end = std::find_if(begin, last, is_face);
            std::stable_sort(begin, end, [](const PlacedSurface& a, const PlacedSurface& b) {
                return a.axis_position < b.axis_position;
            });
            begin = end == last ? last : end + 1;
        }
    }

    EyePath path_;
    Pose frame_;
    Point here_{0.0};
    Point last_face_{0.0};
    std::size_t last_face_part_ = 0;
    std::string_view last_face_name_;  // of a layout that outlives the walk
    Direction direction_{0, 0, 1};
    double position_ = 0;
    PerWavelength medium_{1, 1, 1};
    bool keep_steps_ = false;
    bool axis_alone_;
};

// Where each thin lens finds the image it re-images, walking forward from the objective's image.
void find_object_distances(EyePath& path, double image_behind_rear) {
    double distance = image_behind_rear;
    std::vector<double> found;
    for (const AxialStep& step : path.steps) {
        distance -= step.reduced();
        if (step.lens_focal_length == 0) continue;
        found.push_back(distance);
        distance = 1 / (1 / distance + 1 / step.lens_focal_length);
    }
    std::size_t next = 0;
    for (PlacedSurface& surface : path.surfaces) {
        if (surface.kind == SurfaceKind::thin_lens) surface.object_distance = found.at(next++);
    }
}

struct Seats {
    std::array<double, 2> shift{};
    std::array<double, 2> wanted{};
    std::array<double, 2> image{};  ///< behind its own field stop, where each eye wants it
    double focus_offset = 0;
};

// Each seat takes half of the difference between the eyes and between the arms; the drawtube takes the mean. `together`
// is what both seats move beside that.
Seats seats_for(const SplitterHead& head,
                const EyepiecePair& eyepiece,
                const Observer& observer,
                double arm_difference,
                Millimetres together) {
    const double travel = travel_per_dioptre(eyepiece.focal_length).value;
    // A short-sighted eye (negative dioptres) wants the image behind the eyepiece's own focal plane.
    const double left = -observer.correction(Eye::left).value * travel;
    const double right = -observer.correction(Eye::right).value * travel;
    Seats seats;
    seats.focus_offset = (left + right) / 2;
    seats.image = {left, right};
    // The longer arm's image falls the nearer.
    const double left_out = (right - left - arm_difference) / 2;
    seats.wanted = {left_out, -left_out};
    for (std::size_t i = 0; i < 2; ++i) {
        seats.shift[i] = std::clamp(seats.wanted[i] + together.value, -head.seat_travel.value,
                                    head.seat_travel.value);
    }
    return seats;
}

Result<void> set_target(Train& train, const Setup& setup, const Choice& choice) {
    const auto& target = part_as<Target>(setup, choice.target);
    std::optional<Millimetres> distance;
    if (target.distance) distance = to_millimetres(*target.distance);
    if (distance && *distance < 2 * telescope_of(setup).focal_length) {
        return fail(ErrorCode::impossible,
                    "the target is nearer than twice the telescope's focal length");
    }
    const TelescopeFacts telescope = telescope_of(setup, train.primary, distance);
    train.objective_focal_length = telescope.focal_length.value;
    train.objective_radius = telescope.aperture.value / 2;
    train.obstruction_radius = telescope.obstruction.value / 2;
    train.object_distance =
        distance.value_or(Millimetres{std::numeric_limits<double>::infinity()}).value;
    train.back_focus = telescope.back_focus.value;
    return {};
}

struct Stand {
    Millimetres drawtube{0};
    Millimetres primary{0};
    Millimetres seats{0};
    bool axis_alone = false;
};

// Lays out the parts in the light for both eyes and walks through them one after the other. What stands ahead of the
// head is laid out once: it is the same.
class TrainBuilder {
public:
    TrainBuilder(const Setup& setup, const Observer& observer, const Stand& stand, Train& train)
        : setup_(setup),
          observer_(observer),
          stand_(stand),
          train_(train),
          in_light_(parts_in_light(setup, train.choice)),
          layouts_(in_light_.size()),
          walks_{PathBuilder{Eye::left, stand.axis_alone},
                 PathBuilder{Eye::right, stand.axis_alone}} {}

    // Up to the head: the eyepieces come when it is known where their seats stand.
    Result<void> add_up_to_head(Eye eye) {
        const std::size_t eyepiece = in_light_.size() - 1;
        for (std::size_t i = 0; i < eyepiece; ++i) {
            if (eye == Eye::left || role_at(i) >= Role::splitter) lay_out(i, context_for(eye));
        }
        for (std::size_t i = 0; i < eyepiece; ++i) {
            if (eye == Eye::left && role_at(i) == Role::chain) keep_lens_out_of_glass(i);
            if (auto added = walk(eye, i); !added) return added;
        }
        return {};
    }

    Result<void> add_eyepiece(Eye eye, double seat_shift) {
        LayoutContext context = context_for(eye);
        context.seat_shift = Millimetres{seat_shift};
        lay_out(in_light_.size() - 1, context);
        return walk(eye, in_light_.size() - 1);
    }

    EyePath finish(Eye eye) { return walks_[side_of(eye)].finish(); }

private:
    [[nodiscard]] Role role_at(std::size_t i) const { return role_of(setup_.parts[in_light_[i]]); }

    [[nodiscard]] LayoutContext context_for(Eye eye) const {
        return {.eye = eye,
                .drawtube = stand_.drawtube,
                .pupil_distance = observer_.pupil_distance,
                .primary = stand_.primary,
                .shows_bodies = !stand_.axis_alone};
    }

    void lay_out(std::size_t i, const LayoutContext& context) {
        layouts_[i] = layout_of(setup_.parts[in_light_[i]].body, context);
    }

    // A lens that is said to stand in glass is laid out anew at the face that it meets.
    void keep_lens_out_of_glass(std::size_t i) {
        const Surface* lens = lens_of(layouts_[i]);
        const auto behind = next_face(setup_, in_light_, layouts_, i);
        if (lens == nullptr || !behind) return;
        LensRoom room;
        room.part = in_light_[i];
        room.stated = lens->part_from_surface.origin.z;
        room.before = walks_[side_of(Eye::left)].last_face();
        room.behind = *behind;
        for (std::size_t next = i; next < in_light_.size(); ++next) {
            const UnstatedPlaces& unstated = layouts_[next].unstated;
            if (in_light_[next] == behind->part && unstated.first_glass)
                room.spare = unstated.spare;
        }
        if (room.inside() > 0) {
            LayoutContext context = context_for(Eye::left);
            context.lens_at = Millimetres{room.placed()};
            lay_out(i, context);
        }
        train_.lens_rooms.push_back(std::move(room));
    }

    Result<void> walk(Eye eye, std::size_t i) {
        const std::size_t index = in_light_[i];
        const bool counts = role_at(i) > Role::focuser;
        const auto light =
            walks_[side_of(eye)].add(index, setup_.parts[index], layouts_[i], counts, train_);
        if (!light) return tl::make_unexpected(light.error());
        if (counts) keep_light_path(eye, *light);
        return {};
    }

    // The left eye's comes first; the right eye's length joins it.
    void keep_light_path(Eye eye, const LightPath& light) {
        if (eye == Eye::left) {
            train_.light_paths.push_back(light);
            return;
        }
        const auto same =
            std::find_if(train_.light_paths.begin(), train_.light_paths.end(),
                         [&](const LightPath& path) { return path.part == light.part; });
        same->derived_right = light.derived_right;
    }

    const Setup& setup_;
    const Observer& observer_;
    const Stand& stand_;
    Train& train_;
    std::vector<std::size_t> in_light_;
    std::vector<PartLayout> layouts_;
    std::array<PathBuilder, 2> walks_;
};

Result<void> place_parts(Train& train, const Setup& setup, const Stand& stand) {
    const auto& observer = part_as<Observer>(setup, train.choice.observer);
    const auto* head = find_part<SplitterHead>(setup);
    BEAMFORK_EXPECTS(head != nullptr);
    TrainBuilder builder(setup, observer, stand, train);
    for (const Eye eye : both_eyes) {
        if (auto added = builder.add_up_to_head(eye); !added) return added;
    }
    for (const LightPath& path : train.light_paths)
        train.arm_difference += path.derived_left - path.derived_right;
    const auto& pair = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    train.arm_difference += (pair.filter_shift(Eye::right) - pair.filter_shift(Eye::left)).value;
    constexpr double rounding = 1e-9;  // of arms that are equal, mm
    if (std::abs(train.arm_difference) < rounding) train.arm_difference = 0;
    const Seats seats = seats_for(*head, pair, observer, train.arm_difference, stand.seats);
    train.focus_offset = seats.focus_offset;
    for (std::size_t side = 0; side < 2; ++side) {
        const Eye eye = both_eyes[side];
        if (auto added = builder.add_eyepiece(eye, seats.shift[side]); !added) return added;
        EyePath& path = train.paths[side] = builder.finish(eye);
        path.object_distance = train.object_distance;
        path.wanted_image = seats.image[side];
        path.seat_shift = seats.shift[side];
        path.seat_shift_wanted = seats.wanted[side];
        find_object_distances(path, train.back_focus - stand.drawtube.value);
    }
    return {};
}

Result<Train> build(const Setup& setup, const Choice& choice, const Stand& stand) {
    if (const auto fault = order_fault(setup)) return fail(ErrorCode::impossible, fault->sentence);
    Train train;
    train.choice = choice;
    train.drawtube = stand.drawtube;
    train.primary = stand.primary;
    if (auto set = set_target(train, setup, choice); !set) return tl::make_unexpected(set.error());
    if (auto placed = place_parts(train, setup, stand); !placed)
        return tl::make_unexpected(placed.error());
    std::erase_if(train.placed, [&](const PlacedPart& placed) {
        return placed.eye == Eye::right && role_of(setup.parts[placed.part]) < Role::splitter;
    });
    std::stable_sort(train.placed.begin(), train.placed.end(),
                     [](const PlacedPart& a, const PlacedPart& b) {
                         return a.eye == Eye::left && b.eye == Eye::right;
                     });
    return train;
}

}  // namespace

Result<Train> build_train(const Setup& setup,
                          const Choice& choice,
                          Millimetres drawtube,
                          Millimetres primary,
                          Millimetres seats) {
    return build(setup, choice, {drawtube, primary, seats});
}

Result<Train>
build_axes(const Setup& setup, const Choice& choice, Millimetres drawtube, Millimetres primary) {
    return build(setup, choice, {.drawtube = drawtube, .primary = primary, .axis_alone = true});
}

}  // namespace beamfork
