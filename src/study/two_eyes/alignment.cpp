#include "study/two_eyes/alignment.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

#include "parts/eyepiece_pair.hpp"
#include "parts/prism_errors.hpp"
#include "parts/splitter_head.hpp"
#include "study/two_eyes/alignment_bench.hpp"

namespace beamfork {

namespace {

Misalignment per_unit_of(const Misalignment& moved, const Misalignment& still, double amount) {
    return {(moved.inward - still.inward) / amount, (moved.left_up - still.left_up) / amount,
            (moved.rotation - still.rotation) / amount, (moved.size - still.size) / amount};
}

void find_allowed(ErrorAllowance& tolerance) {
    struct Way {
        const char* name;
        double limit;
        double effect;
    };
    const Misalignment& per_unit = tolerance.per_unit;
    tolerance.allowed = std::numeric_limits<double>::infinity();
    for (const Way& way : {Way{"height", height_limit.fair.value, per_unit.left_up.value},
                           Way{"sideways", outward_limit.fair.value, per_unit.inward.value},
                           Way{"rotation", rotation_limit.fair.value, per_unit.rotation.value}}) {
        constexpr double nothing = 1e-6;  // below what rounding leaves of an effect that is none
        if (std::abs(way.effect) < nothing) continue;
        const double allowed = way.limit / std::abs(way.effect);
        if (allowed >= tolerance.allowed) continue;
        tolerance.allowed = allowed;
        tolerance.limited_by = way.name;
    }
}

constexpr std::array left_eye{Eye::left};
constexpr std::array right_eye{Eye::right};

struct NamedPrism {
    PrismErrors SplitterHead::*errors;
    const char* key;
    const char* words;
    std::span<const Eye> eyes;
};

std::vector<NamedPrism> prisms_of(Mechanism mechanism) {
    using S = SplitterHead;
    std::vector<NamedPrism> prisms{{&S::cube_errors, "cube", "cube", both_eyes},
                                   {&S::arm_prism_errors, "arm_prism", "arm prism", left_eye}};
    if (mechanism == Mechanism::hinged) {
        prisms.push_back({&S::rhomboid_errors, "rhomboid", "rhomboid", right_eye});
    } else {
        prisms.push_back({&S::inner_prism_errors, "inner_prism", "inner prism", right_eye});
        prisms.push_back({&S::outer_prism_errors, "outer_prism", "outer prism", right_eye});
    }
    return prisms;
}

// The head's prisms, each with its six errors, about where they stand now.
void add_prisms(std::vector<ErrorAllowance>& list,
                const Setup& setup,
                const AlignmentBench& bench,
                const Misalignment& still) {
    const std::size_t part = parts_with_role(setup, Role::splitter).front();
    SplitterHead head = part_as<SplitterHead>(setup, part);
    const std::vector<NamedPrism> prisms = prisms_of(head.mechanism);
    if (head.prisms_stand == PrismsStand::true_to_place) {
        for (const NamedPrism& one : prisms)
            head.*one.errors = {};
        head.prisms_stand = PrismsStand::slightly_off;
    }
    for (const NamedPrism& one : prisms) {
        for (const PrismErrorKind& kind : prism_error_kinds()) {
            const double amount = kind.unit == FieldUnit::arcminute ? 1 : 0.02;
            SplitterHead moved = head;
            moved.*one.errors.*kind.value += amount;
            list.push_back({part,
                            one.words,
                            std::string(kind.words),
                            kind.unit,
                            std::string(one.key) + "_" + std::string(kind.key),
                            per_unit_of(bench.seen_with(part, moved, one.eyes), still, amount),
                            head.*one.errors.*kind.value,
                            0,
                            {}});
        }
    }
}

void add_eyepieces(std::vector<ErrorAllowance>& list,
                   const Train& train,
                   const Setup& setup,
                   const AlignmentBench& bench,
                   const Misalignment& still) {
    const std::size_t part = train.choice.eyepiece;
    const auto& pair = part_as<EyepiecePair>(setup, part);
    struct Named {
        Millimetres EyepiecePair::*play;
        const char* key;
        const char* place;
        const char* error;
        std::span<const Eye> eyes;
    };
    for (const Named& one : {Named{&EyepiecePair::left_play_x, "left_play_x_mm", "left eyepiece",
                                   "off sideways", left_eye},
                             Named{&EyepiecePair::left_play_y, "left_play_y_mm", "left eyepiece",
                                   "off in height", left_eye},
                             Named{&EyepiecePair::right_play_x, "right_play_x_mm", "right eyepiece",
                                   "off sideways", right_eye},
                             Named{&EyepiecePair::right_play_y, "right_play_y_mm", "right eyepiece",
                                   "off in height", right_eye}}) {
        constexpr double amount = 0.02;
        EyepiecePair moved = pair;
        (moved.*one.play).value += amount;
        list.push_back({part,
                        one.place,
                        one.error,
                        FieldUnit::millimetre,
                        one.key,
                        per_unit_of(bench.seen_with(part, moved, one.eyes), still, amount),
                        (pair.*one.play).value,
                        0,
                        {}});
    }
}

// How far a prism's edge moves for it: what makes turns and shifts comparable.
Millimetres edge_movement(const ErrorAllowance& tolerance, Millimetres prism_width) {
    return tolerance.unit == FieldUnit::arcminute
               ? to_radians(Arcminutes{tolerance.allowed}).value * prism_width
               : Millimetres{tolerance.allowed};
}

}  // namespace

Alignment alignment(const Setup& setup, const Train& train, Millimetres gap_difference) {
    const AlignmentBench bench(setup, train);
    const auto arms = bench.images();
    Alignment result;
    result.same_handed = same_hand(arms[0], arms[1]);
    result.seen = bench.seen();
    const auto& eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    result.focus_difference = {gap_difference / travel_per_dioptre(eyepiece.focal_length)};
    add_prisms(result.tolerances, setup, bench, result.seen);
    add_eyepieces(result.tolerances, train, setup, bench, result.seen);
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    const Millimetres width = part_as<SplitterHead>(setup, head).prism_width;
    for (ErrorAllowance& tolerance : result.tolerances)
        find_allowed(tolerance);
    std::stable_sort(result.tolerances.begin(), result.tolerances.end(),
                     [&](const ErrorAllowance& a, const ErrorAllowance& b) {
                         return edge_movement(a, width) < edge_movement(b, width);
                     });
    return result;
}

Merging Alignment::sideways() const {
    return merging(seen.inward, seen.inward > Arcminutes{} ? inward_limit : outward_limit);
}
Merging Alignment::height() const { return merging(seen.left_up, height_limit); }
Merging Alignment::rotation() const { return merging(seen.rotation, rotation_limit); }
Merging Alignment::size() const { return merging(seen.size, size_limit); }
Merging Alignment::worst() const { return std::max({sideways(), height(), rotation(), size()}); }

const ErrorAllowance* Alignment::main_cause() const {
    const ErrorAllowance* main = nullptr;
    double most = 0;
    for (const ErrorAllowance& tolerance : tolerances) {
        const double part_of_limit = std::abs(tolerance.stated) / tolerance.allowed;
        if (part_of_limit <= most) continue;
        most = part_of_limit;
        main = &tolerance;
    }
    return main;
}

}  // namespace beamfork
