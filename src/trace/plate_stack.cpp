// Finds stacks of plates in a straightened path: runs of refracting faces that are all square to the axis.
#include <algorithm>
#include <cmath>

#include "trace/straight_path.hpp"

namespace beamfork {

namespace {

// A face tilted by less than this bends light by less than the last place of a double can tell.
constexpr double square_to = 1e-13;

bool stands_square(const StraightPlane& plane) {
    return std::abs(plane.normal.x) < square_to && std::abs(plane.normal.y) < square_to;
}

const PlaneRefraction* square_face(const StraightSection& section) {
    const auto* face = std::get_if<PlaneRefraction>(&section.bend);
    return face && stands_square(face->plane) ? face : nullptr;
}

class Stacker {
public:
    explicit Stacker(const StraightSection& first) : index_(first.index) {
        stack_.medium_before = medium();
    }

    // False when the section's media are one too many: the stack ends before it.
    bool add(const StraightSection& section, double index_after) {
        const bool is_known = std::find(stack_.indices.begin(), stack_.indices.end(), index_after)
                              != stack_.indices.end();
        if (!is_known && stack_.indices.size() == PlateStack::most_media) return false;
        pass(section.passed);
        PlateStep step{.plane = square_face(section)->plane, .medium = medium()};
        // Light that came through a medium as thin as the next one cannot be totally reflected at it.
        step.may_leak = std::all_of(stack_.indices.begin(), stack_.indices.end(),
                                    [&](double known) { return index_after < known; });
        step.across_most = index_after * index_after;
        index_ = index_after;
        add_square(std::move(step));
        ++faces_;
        return true;
    }
    void pass(const std::vector<StraightPlane>& planes) {
        for (const StraightPlane& plane : planes) {
            PlateStep step{.plane = plane, .medium = medium()};
            if (stands_square(plane)) {
                add_square(std::move(step));
            } else {
                step.is_square = false;
                stack_.steps.push_back(std::move(step));
            }
        }
    }
    [[nodiscard]] int faces() const { return faces_; }
    PlateStack take() {
        stack_.medium_after = medium();
        double at = stack_.first_plane;
        for (PlateStep& step : stack_.steps) {
            if (step.is_square) {
                step.square_plane = at = plane_z(step.plane);
            } else {
                step.square_plane = at;
                step.from_square = step.plane.offset - step.plane.normal.z * at;
            }
        }
        return std::move(stack_);
    }

private:
    static double plane_z(const StraightPlane& plane) { return plane.offset / plane.normal.z; }

    std::size_t medium() {
        auto& indices = stack_.indices;
        const auto found = std::find(indices.begin(), indices.end(), index_);
        if (found != indices.end()) return static_cast<std::size_t>(found - indices.begin());
        indices.push_back(index_);
        stack_.lengths.push_back(0);
        return indices.size() - 1;
    }

    void add_square(PlateStep step) {
        const double z = plane_z(step.plane);
        if (!has_square_) stack_.first_plane = stack_.last_plane = z;
        has_square_ = true;
        step.plane.from_u -= step.plane.u.z * z;
        step.plane.from_v -= step.plane.v.z * z;
        for (EdgeSide& side : step.plane.sides)
            side.from -= side.along.z * z;
        step.advance = z - stack_.last_plane;
        stack_.lengths[step.medium] += step.advance;
        stack_.last_plane = z;
        stack_.steps.push_back(std::move(step));
    }

    PlateStack stack_;
    double index_;
    int faces_ = 0;
    bool has_square_ = false;
};

}  // namespace

void stack_plates(StraightPath& path) {
    std::vector<StraightSection> stacked;
    for (std::size_t i = 0; i < path.sections.size();) {
        Stacker stacker(path.sections[i]);
        std::size_t next = i;
        while (next + 1 < path.sections.size() && square_face(path.sections[next])
               && stacker.add(path.sections[next], path.sections[next + 1].index))
            ++next;
        if (stacker.faces() < 2) {
            stacked.push_back(std::move(path.sections[i++]));
            continue;
        }
        StraightSection& following = path.sections[next];
        stacker.pass(following.passed);
        following.passed.clear();
        stacked.push_back({path.sections[i].index, {}, stacker.take()});
        i = next;
    }
    path.sections = std::move(stacked);
}

}  // namespace beamfork
