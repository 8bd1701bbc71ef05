#include "plan/drawer_parts.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "parts/coma_corrector.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mount.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "study/fit/joints.hpp"
#include "study/focus/focus_budget.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

// A lens that finds the faces about it: it is laid out where it is stated.
Part probe_lens() {
    Shifter lens;
    lens.given = ShifterGiven::focal_length;
    lens.focal_length = Millimetres{-1000};
    lens.lens_offset = Millimetres{0};
    lens.length = Millimetres{0};
    return {"probe", lens, {}};
}

// A train of the kinds' own values but for the parts that are given; ready to be measured.
struct Bench {
    Part telescope{"telescope", Refractor{}, {}};
    Part focuser{"focuser", Focuser{}, {}};
    std::vector<Part> chain{};
    Part head{"head", SplitterHead{}, {}};
    Part pair{"pair", EyepiecePair{}, {}};
    Part observer{"observer", Observer{}, {}};
    Part target{"target", Target{}, {}};

    [[nodiscard]] Setup setup() const {
        Setup made;
        made.parts = {telescope, focuser};
        made.parts.insert(made.parts.end(), chain.begin(), chain.end());
        for (const Part* part : {&head, &pair, &observer, &target})
            made.parts.push_back(*part);
        return with_valid_choice(std::move(made));
    }
    [[nodiscard]] Result<Train> axes() const {
        const Setup made = setup();
        return build_axes(made, made.chosen, Millimetres{0});
    }
};

double mass_of(const Part& part) {
    const auto mount = mount_of(part.body);
    return mount && mount->mass ? mount->mass->value : 0;
}

Result<ChainPart> measured_chain_part(const Part& part, std::size_t index) {
    const Mount mount = mount_of(part.body).value_or(Mount{});
    ChainPart found{.part = index, .front = mount.front, .rear = mount.rear};
    found.mass = mass_of(part);
    found.turns_light = kind_of(part.body).turns_light;
    found.is_corrector = part.body.is<ComaCorrector>();
    found.is_spacer = part.body.is<Spacer>();
    constexpr std::size_t here = 2;  // behind telescope and focuser
    const auto before = Bench{.chain = {part, probe_lens()}}.axes();
    if (!before) return tl::make_unexpected(before.error());
    found.length = before->light_paths.front().counted();
    if (kind_of(part.body).holds_lens) {
        const PartLayout layout = layout_of(part.body, LayoutContext{});
        const Surface* lens = lens_of(layout);
        BEAMFORK_EXPECTS(lens != nullptr);
        found.lens_focal_length = lens->focal_length;
        found.lens_at = lens->part_from_surface.origin.z;
        return found;
    }
    const auto behind = Bench{.chain = {probe_lens(), part}}.axes();
    if (!behind) return tl::make_unexpected(behind.error());
    const LensNeighbour& last = before->lens_rooms.front().before;
    const LensNeighbour& first = behind->lens_rooms.front().behind;
    if (last.part == here) found.behind_last_face = -last.place;
    if (first.part == here + 1) found.first_face = first.place;
    return found;
}

Result<Head> measured_head(const Part& part, std::size_t index) {
    const Mount mount = mount_of(part.body).value_or(Mount{});
    Head head{.part = index, .front = mount.front, .rear = mount.rear};
    const auto axes = Bench{.chain = {probe_lens()}, .head = part}.axes();
    if (!axes) return tl::make_unexpected(axes.error());
    head.first_face = axes->lens_rooms.front().behind.place;
    head.seat_travel = part.body.get<SplitterHead>().seat_travel.value;
    head.mass = mass_of(part);
    return head;
}

Result<Ending> measured_ending(const Part& head, const Part& pair, const Part& observer) {
    const auto axes = Bench{.head = head, .pair = pair, .observer = observer}.axes();
    if (!axes) return tl::make_unexpected(axes.error());
    return Ending{
        needed_back_focus(axes->path(Eye::left), Millimetres{axes->served_image(Eye::left)}).value,
        axes->path(Eye::left).seat_shift_wanted, axes->arm_difference};
}

// Measures the parts one by one, in the order in which the later ask for the earlier.
class Measuring {
public:
    Measuring(Drawer& drawer, const std::vector<bool>& may_use)
        : drawer_(drawer), may_use_(may_use) {}

    Result<DrawerParts> measure(const std::vector<std::string>& observers) {
        auto done = find_uses(observers)
                        .and_then([&] { return measure_tubes(); })
                        .and_then([&] { return measure_chain(); })
                        .and_then([&] { return measure_heads(); });
        if (!done) return tl::make_unexpected(done.error());
        return std::move(found_);
    }

private:
    [[nodiscard]] const Part& part(std::size_t index) const { return drawer_.parts[index].part; }

    [[nodiscard]] std::vector<std::size_t> usable(Role role) const {
        auto all = parts_with_role(drawer_, role);
        std::erase_if(all,
                      [&](std::size_t one) { return one < may_use_.size() && !may_use_[one]; });
        return all;
    }

    Result<std::vector<std::size_t>> named_observers(const std::vector<std::string>& names) {
        if (usable(Role::observer).empty())
            drawer_.parts.push_back({{std::string(Observer::label), Observer{}, {}}});
        const auto all = usable(Role::observer);
        if (names.empty()) return all;
        std::vector<std::string> known;
        for (const std::size_t one : all)
            known.push_back(part(one).name);
        std::vector<std::size_t> chosen;
        for (const std::string& name : names) {
            const auto at = std::find(known.begin(), known.end(), name);
            if (at == known.end()) {
                return fail(ErrorCode::bad_input,
                            fmt::format("no observer is called '{}'; expected one of: {}{}", name,
                                        fmt::join(known, ", "), did_you_mean(name, known)));
            }
            chosen.push_back(all[static_cast<std::size_t>(at - known.begin())]);
        }
        return chosen;
    }

    Result<void> find_uses(const std::vector<std::string>& names) {
        const auto observers = named_observers(names);
        if (!observers) return tl::make_unexpected(observers.error());
        if (usable(Role::target).empty()) drawer_.parts.push_back({{"The sky", Target{}, {}}});
        for (const std::size_t observer : *observers) {
            for (const std::size_t target : usable(Role::target)) {
                const bool is_near = part(target).body.get<Target>().distance.has_value();
                found_.uses.push_back({observer, target, is_near});
            }
        }
        if (found_.uses.size() <= most_uses) return {};
        return fail(ErrorCode::bad_input,
                    fmt::format("{} observers and targets together make more than {} cases: name "
                                "the observers to plan for",
                                found_.uses.size(), most_uses));
    }

    Result<void> measure_tubes() {
        for (const std::size_t telescope : usable(Role::telescope)) {
            bool has_focuser = false;
            for (const std::size_t focuser : usable(Role::focuser)) {
                if (telescope_of_focuser(drawer_, focuser) != telescope) continue;
                has_focuser = true;
                if (auto done = measure_tube(telescope, focuser); !done) return done;
            }
            if (!has_focuser)
                found_.left_out.push_back(
                    fmt::format("{}: no focuser of it is in the drawer", part(telescope).name));
        }
        return {};
    }

    Result<void> measure_tube(std::size_t telescope, std::size_t focuser) {
        const auto body = with_lower_focuser(part(telescope).body, drawer_.parts[focuser].lower_by);
        if (!body) {
            found_.left_out.push_back(fmt::format("{} on {}: it cannot be so much lower",
                                                  part(focuser).name, part(telescope).name));
            return {};
        }
        Tube tube{.telescope = telescope, .focuser = focuser};
        Part lowered = part(telescope);
        lowered.body = *body;
        tube.alone.parts = {lowered, part(focuser)};
        tube.rear = mount_of(part(focuser).body).value_or(Mount{}).rear;
        tube.takes_corrector = body->is<Newtonian>();
        Bench bench{.telescope = lowered, .focuser = part(focuser), .chain = {probe_lens()}};
        const auto axes = bench.axes();
        if (!axes) return tl::make_unexpected(axes.error());
        tube.behind_last_face = -axes->lens_rooms.front().before.place;
        for (const Sighting& use : found_.uses) {
            bench.target = part(use.target);
            const auto focused = bench.axes();
            tube.back_focus.push_back(focused ? std::optional(focused->back_focus) : std::nullopt);
            const auto& distance = bench.target.body.get<Target>().distance;
            tube.distance.push_back(distance ? std::optional(to_millimetres(*distance))
                                             : std::nullopt);
        }
        found_.tubes.push_back(std::move(tube));
        return {};
    }

    Result<void> measure_chain() {
        for (const std::size_t one : usable(Role::chain)) {
            if (part(one).body.is<FilterPlate>()) {
                found_.left_out.push_back(part(one).name
                                          + ": filters are put in once a train stands; each takes "
                                            "about a third of its thickness");
                continue;
            }
            const auto measured = measured_chain_part(part(one), one);
            if (!measured) return tl::make_unexpected(measured.error());
            found_.chain.push_back(*measured);
        }
        return {};
    }

    Result<void> measure_heads() {
        for (const std::size_t pair : usable(Role::eyepiece))
            found_.pairs.push_back({pair, 2 * mass_of(part(pair))});
        for (const std::size_t one : usable(Role::splitter)) {
            auto head = measured_head(part(one), one);
            if (!head) return tl::make_unexpected(head.error());
            for (const Sighting& use : found_.uses)
                head->fits_eyes.push_back(part(one).body.get<SplitterHead>().reaches(
                    part(use.observer).body.get<Observer>().pupil_distance));
            for (std::size_t pair = 0; pair < found_.pairs.size(); ++pair) {
                if (auto done = add_pair(*head, pair); !done) return done;
            }
            found_.heads.push_back(*std::move(head));
        }
        return {};
    }

    Result<void> add_pair(Head& head, std::size_t pair) {
        const Part& eyepieces = part(found_.pairs[pair].part);
        const Mount mount = mount_of(eyepieces.body).value_or(Mount{});
        if (!fits(head.rear, mount.front)) return {};
        std::vector<Ending> endings;
        for (const Sighting& use : found_.uses) {
            // Observers stand together; their targets change nothing here.
            if (!endings.empty() && use.observer == found_.uses[endings.size() - 1].observer) {
                endings.push_back(endings.back());
                continue;
            }
            const auto ending = measured_ending(part(head.part), eyepieces, part(use.observer));
            if (!ending) return tl::make_unexpected(ending.error());
            endings.push_back(*ending);
        }
        head.pairs.push_back(pair);
        head.endings.push_back(std::move(endings));
        return {};
    }

    Drawer& drawer_;
    const std::vector<bool>& may_use_;
    DrawerParts found_;
};

}  // namespace

std::optional<PartBody> with_lower_focuser(const PartBody& telescope, Millimetres lower_by) {
    if (lower_by.value == 0) return telescope;
    PartBody changed = telescope;
    const auto add = [&](std::string_view key, double length) {
        const auto before = field_value(changed, key);
        if (!before) return true;  // not of this kind
        auto made = with_field_unchecked(changed, key, std::get<double>(*before) + length);
        if (!made) return false;
        changed = *std::move(made);
        return true;
    };
    // All are measured to the drawtube's rear face, which comes nearer.
    const bool holds = add("back_focus_mm", lower_by.value)
                       && add("axis_to_drawtube_mm", -lower_by.value)
                       && add("rear_face_mm", -lower_by.value);
    if (!holds || contradiction(changed)) return std::nullopt;
    return changed;
}

Result<DrawerParts> measured_parts(Drawer& drawer,
                                   const std::vector<bool>& may_use,
                                   const std::vector<std::string>& observers) {
    return Measuring(drawer, may_use).measure(observers);
}

}  // namespace beamfork
