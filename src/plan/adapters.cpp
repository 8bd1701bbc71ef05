#include "plan/adapters.hpp"

#include <algorithm>
#include <tuple>

namespace beamfork {

namespace {

constexpr std::size_t fitting_count = static_cast<std::size_t>(Fitting::camera_m42_female) + 1;

std::size_t place_of(Fitting fitting) { return static_cast<std::size_t>(fitting); }

// A row with its length, in the order in which the shorter one comes first.
struct Way {
    double length = 0;
    PartRow row;
    [[nodiscard]] bool comes_before(const Way& other) const {
        return std::tuple(length, row.size(), row)
               < std::tuple(other.length, other.row.size(), other.row);
    }
};

bool holds(const PartRow& row, std::size_t part) {
    return std::find(row.begin(), row.end(), part) != row.end();
}

}  // namespace

Adapters::Adapters(std::span<const ChainPart> chain) : chain_(chain) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
        if (chain[i].is_spacer && chain[i].front != Fitting::unstated
            && chain[i].rear != Fitting::unstated)
            spacers_.push_back(i);
    }
    known_.reserve(fitting_count * fitting_count);
    for (std::size_t rear = 0; rear < fitting_count; ++rear) {
        for (std::size_t front = 0; front < fitting_count; ++front)
            known_.push_back(shortest(static_cast<Fitting>(rear), static_cast<Fitting>(front), {}));
    }
}

// Each end is reached by its shortest row; a row grows by one spacer until none becomes shorter (R. Bellman, On a routing
// problem, Quarterly of Applied Mathematics 16, 87-90, 1958).
std::optional<PartRow> Adapters::shortest(Fitting rear, Fitting front, const PartRow& taken) const {
    if (fits(rear, front)) return PartRow{};
    std::vector<std::optional<Way>> best(fitting_count);
    const auto offer = [&](std::size_t spacer, const Way& before) {
        if (holds(taken, spacer) || holds(before.row, spacer)) return false;
        Way way{before.length + chain_[spacer].length, before.row};
        way.row.push_back(spacer);
        auto& known = best[place_of(chain_[spacer].rear)];
        if (known && !way.comes_before(*known)) return false;
        known = std::move(way);
        return true;
    };
    for (const std::size_t spacer : spacers_) {
        if (chain_[spacer].front == mate_of(rear)) offer(spacer, {});
    }
    for (bool changed = true; changed;) {
        changed = false;
        for (const std::size_t spacer : spacers_) {
            const auto before = best[place_of(mate_of(chain_[spacer].front))];
            if (before && offer(spacer, *before)) changed = true;
        }
    }
    const auto& found = best[place_of(mate_of(front))];
    return found ? std::optional(found->row) : std::nullopt;
}

std::optional<PartRow> Adapters::between(Fitting rear, Fitting front, const PartRow& taken) const {
    const auto& row = known_[place_of(rear) * fitting_count + place_of(front)];
    if (!row) return std::nullopt;  // with fewer spacers still less
    const bool is_free = std::none_of(row->begin(), row->end(),
                                      [&](std::size_t part) { return holds(taken, part); });
    return is_free ? row : shortest(rear, front, taken);
}

}  // namespace beamfork
