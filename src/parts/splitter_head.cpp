#include "parts/splitter_head.hpp"

#include <algorithm>
#include <cmath>

#include "parts/splitter_head_bodies.hpp"

namespace beamfork {

double SplitterHead::split_share(Eye eye) const {
    const double reflected = reflected_percent / 100;
    return (1 - splitter_loss_percent / 100) * (eye == Eye::left ? reflected : 1 - reflected);
}

Millimetres SplitterHead::pupil_distance_at(Degrees hinge) const {
    return 2 * arm_offset * std::cos(to_radians(hinge).value);
}

Degrees SplitterHead::hinge_for(Millimetres pupil_distance) const {
    if (is_sliding()) return {0};
    const double cosine = std::clamp(pupil_distance / (2 * arm_offset), 0.0, 1.0);
    return std::clamp(to_degrees(Radians{std::acos(cosine)}), hinge_low, hinge_high);
}

Millimetres SplitterHead::narrowest() const {
    if (!is_sliding()) return pupil_distance_at(hinge_high);
    return 2 * (arm_offset - slide.value_or(arm_offset - prism_width));
}

Millimetres SplitterHead::widest() const {
    return is_sliding() ? 2 * arm_offset : pupil_distance_at(hinge_low);
}

bool SplitterHead::reaches(Millimetres pupil_distance) const {
    constexpr Millimetres rounding{1e-9};
    return pupil_distance <= widest() + rounding && pupil_distance >= narrowest() - rounding;
}

Millimetres SplitterHead::arm_length_for(Millimetres pupil_distance) const {
    if (!is_sliding()) return arm_offset;
    return std::clamp(pupil_distance, narrowest(), widest()) / 2;
}

Millimetres SplitterHead::path_beyond_middle(Millimetres pupil_distance) const {
    return arm_length_for(pupil_distance) - arm_length_for(middle());
}

namespace {

void finish_faces(PartLayout& layout, const SplitterHead& head, Eye eye) {
    coat(layout.surfaces, head.coating);
    for (Surface& surface : layout.surfaces) {
        if (surface.name == cube_interface) surface.coating.stated_share = head.split_share(eye);
    }
}

// Lays the glass of one arm. Each arm is laid out towards +y of its own frame and turned to its side.
class ArmGlass {
public:
    ArmGlass(const SplitterHead& head, Millimetres entry_air, const LayoutContext& context)
        : head_(head),
          shows_bodies_(context.shows_bodies),
          entry_air_(entry_air.value),
          gap_(head.arm_length_for(context.pupil_distance).value - width_) {
        const Degrees hinge = head.hinge_for(context.pupil_distance);
        left_arm_ = rotation_about_z(to_radians(Degrees{90} + hinge));
        right_arm_ = rotation_about_z(to_radians(Degrees{-90} - hinge));
    }

    [[nodiscard]] const Pose& frame(Eye eye) const {
        return eye == Eye::left ? left_arm_ : right_arm_;
    }

    /// Adds surfaces and, where bodies are shown, glass; returns the exit of the last prism, true to its place.
    Pose add_to(PartLayout& layout, Eye eye) const {
        if (eye == Eye::left) return add_left(layout);
        return head_.is_sliding() ? add_right_sliding(layout) : add_right_hinged(layout);
    }

private:
    // The frame in which a prism really stands from the one in which it should, turned about `middle`.
    [[nodiscard]] Pose off(const PrismErrors& errors, const Point& middle) const {
        const bool is_true = head_.prisms_stand == PrismsStand::true_to_place;
        return is_true ? Pose{} : ideal_from_real(errors, middle);
    }
    [[nodiscard]] Pose off(const PrismErrors& errors) const {
        return off(errors, {0, 0, width_ / 2});
    }
    // Beside light that runs towards +y: a prism that turns it back to +z, folded towards -y of its own frame.
    [[nodiscard]] Pose beside(const Pose& face) const {
        return face * translation(0, 0, gap_) * rotation_about_z(to_radians(Degrees{180}));
    }
    void add(PartLayout& layout, Prism& prism, const Pose& at) const {
        append(layout.surfaces, std::move(prism.surfaces), at);
        show(layout, prism, at);
    }
    // A prism that glass follows without air in between: the face before it goes, its own entry only bounds it.
    void cement(PartLayout& layout, Prism& prism, const Pose& at) const {
        prism.surfaces.front().kind = SurfaceKind::stop;
        prism.surfaces.front().medium_after.clear();
        layout.surfaces.pop_back();
        add(layout, prism, at);
    }
    void show(PartLayout& layout, const Prism& prism, const Pose& at) const {
        if (shows_bodies_) layout.bodies.push_back({prism.body(), at});
    }

    Pose add_left(PartLayout& layout) const {
        Prism cube = cube_reflecting(width_, head_.glass);
        Prism turn = right_angle_prism(width_, kind_, "arm prism");
        const Pose place = left_arm_ * to_cube_;
        const Pose ideal = beside(place * cube.prism_from_exit);
        const Pose real = ideal * off(head_.arm_prism_errors);
        add(layout, cube, place * off(head_.cube_errors));
        add(layout, turn, real);
        const Pose exit = ideal * turn.prism_from_exit;
        const double length = head_.compensator_length().value;
        if (length <= 0) return exit;
        Prism block = glass_block(width_, length, head_.glass, "compensator");
        cement(layout, block, real * turn.prism_from_exit);
        return exit * block.prism_from_exit;
    }

    // The cube as the right eye's light passes it: it turns with the left arm, which shows it.
    Prism pass_cube(PartLayout& layout) const {
        Prism cube = cube_transmitting(width_, head_.glass);
        append(layout.surfaces, std::move(cube.surfaces),
               left_arm_ * to_cube_ * off(head_.cube_errors));
        return cube;
    }

    Pose add_right_hinged(PartLayout& layout) const {
        const Prism cube = pass_cube(layout);
        const double offset = head_.arm_offset.value;
        Prism rhomboid = rhomboid_prism(width_, offset, kind_, "rhomboid");
        const Pose behind = right_arm_ * to_cube_ * cube.prism_from_exit * translation(0, 0, gap_);
        add(layout, rhomboid, behind * off(head_.rhomboid_errors, {0, offset / 2, width_ / 2}));
        return behind * rhomboid.prism_from_exit;
    }

    Pose add_right_sliding(PartLayout& layout) const {
        const Prism cube = pass_cube(layout);
        Prism inner = right_angle_prism(width_, kind_, "inner prism");
        Prism outer = right_angle_prism(width_, kind_, "outer prism");
        const Pose ideal_inner = right_arm_ * to_cube_ * cube.prism_from_exit;
        // Cemented to the cube, it goes where the cube goes.
        const Pose left_from_right = inverse(left_arm_) * right_arm_;
        cement(layout, inner,
               left_arm_ * to_cube_ * off(head_.cube_errors) * left_from_right
                   * cube.prism_from_exit * off(head_.inner_prism_errors));
        const Pose ideal_outer = beside(ideal_inner * inner.prism_from_exit);
        add(layout, outer, ideal_outer * off(head_.outer_prism_errors));
        return ideal_outer * outer.prism_from_exit;
    }

    const SplitterHead& head_;
    bool shows_bodies_;
    double entry_air_;
    double width_ = head_.prism_width.value;
    PrismGlass kind_{head_.glass, head_.reflecting_faces};
    Pose to_cube_ = translation(0, 0, entry_air_);
    double
        gap_;  // of air between cube and the next prism, or between the two that the rhomboid was
    Pose left_arm_;
    Pose right_arm_;
};

}  // namespace

PartLayout SplitterHead::layout(const LayoutContext& context) const {
    PartLayout layout;
    constexpr std::size_t most_surfaces = 14;
    layout.surfaces.reserve(most_surfaces);
    layout.surfaces.push_back(
        round_stop("nose", translation(0, 0, -nose_length.value), entry_clear.value));
    layout.surfaces.push_back(round_stop("entry collar", Pose{}, entry_clear.value));
    const HeadInside stands = inside();
    const ArmGlass glass_of_arms(*this, stands.entry_air, context);
    const Pose glass_exit = glass_of_arms.add_to(layout, context.eye);
    finish_faces(layout, *this, context.eye);
    // Eyepieces sit upright on both arms whatever the hinge does.
    const Pose upright{glm::dmat3(1.0), glass_exit.origin};
    layout.surfaces.push_back(round_stop("exit opening", upright, exit_clear.value));
    layout.part_from_exit = upright * translation(0, 0, stands.seat_height.value);
    layout.end_air = (stands.seat_height - stands.lowest_seat).value;
    layout.unstated = {!entry_air, !seat_height, (stands.deepest_cube - stands.entry_air).value};
    layout.beyond_stated = path_beyond_middle(context.pupil_distance).value;
    if (!context.shows_bodies) return layout;
    add_housing(layout, *this,
                {context.eye, glass_of_arms.frame(context.eye),
                 arm_length_for(context.pupil_distance).value, stands});
    return layout;
}

std::optional<std::string> SplitterHead::contradiction() const {
    if (arm_offset < prism_width) {
        return "arm_offset_mm must be at least prism_width_mm, or the prisms would stand in each "
               "other";
    }
    if (hinge_low > hinge_high) return "hinge_low_deg must not be more than hinge_high_deg";
    if (is_sliding() && slide && *slide > arm_offset - prism_width) {
        return "slide_mm must be at most arm_offset_mm less prism_width_mm, or the prisms would "
               "stand in each other";
    }
    return std::nullopt;
}

}  // namespace beamfork
