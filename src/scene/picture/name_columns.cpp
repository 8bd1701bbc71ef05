#include "scene/picture/name_columns.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

#include "scene/picture/cover_sums.hpp"

namespace beamfork {

namespace {

constexpr float never = std::numeric_limits<float>::infinity();
constexpr float clear_of_leader = 2;   // pixels between a leader and another name's place
constexpr float hidden_cost_px = 900;  // in pixels of leader: a box all over light or metal
constexpr float core_cost_px = 250;    // a box that stands in the core
constexpr float over_words_px = 500;   // a leader through words that stand alone

// A column of boxes: flush with one line, at the left or at the right of the train.
struct Column {
    bool is_left = false;
    float x = 0;
};

// Some names that follow each other, in one column.
struct Group {
    std::size_t first = 0;
    std::size_t end = 0;
    std::size_t column = 0;
    bool runs_down = false;  // with the light
};

struct Stack {
    float cost = 0;
    std::vector<NameInColumn> names;
};

struct Span {
    float low = -never;
    float high = never;
};

class ColumnSearch {
public:
    ColumnSearch(std::vector<ColumnName> names, Viewport viewport, const LightCover& cover)
        : names_(std::move(names)), viewport_(viewport), cover_(cover), sums_(cover) {
        unit_ = names_.front().row_px / 4;
        step_ = 1.5F * unit_;
        slots_ = std::max(1, static_cast<int>((viewport.height - 2 * label_margin_px) / step_));
        find_columns();
        costs_.resize(columns_.size() * names_.size());
        for (std::size_t column = 0; column < columns_.size(); ++column)
            for (std::size_t name = 0; name < names_.size(); ++name)
                costs_[column * names_.size() + name] = slot_costs(columns_[column], names_[name]);
    }

    // All of them, or nothing.
    [[nodiscard]] std::optional<Stack> best() const {
        std::optional<Stack> found;
        for (std::size_t split = 0; split <= names_.size(); ++split)
            for (const bool left_first : {true, false})
                for (const bool runs_down : {true, false})
                    try_split(split, left_first, runs_down, found);
        return found;
    }

private:
    void find_columns() {
        float low = never;
        float high = -never;
        for (const ColumnName& name : names_) {
            for (const glm::vec2 place : name.places[0])
                low = std::min(low, place.x);
            for (const glm::vec2 place : name.places[1])
                high = std::max(high, place.x);
        }
        for (const float off : {6.F, 14.F, 24.F, 38.F}) {
            columns_.push_back({true, low - off * unit_});
            columns_.push_back({false, high + off * unit_});
        }
        const float beside = 5 * unit_;
        columns_.push_back({true, std::min(low, cover_.core.low.x) - beside});
        columns_.push_back({false, std::max(high, cover_.core.high.x) + beside});
    }

    [[nodiscard]] PixelBox
    box_in(const Column& column, const ColumnName& name, float attach) const {
        const float left = column.is_left ? column.x - name.size.x : column.x;
        const float top = attach - attach_of(name);
        return {{left, top}, {left + name.size.x, top + name.size.y}};
    }
    [[nodiscard]] float attach_of(const ColumnName& name) const {
        return std::min(name.size.y / 2, 0.5F * (name.row_px + unit_));
    }
    [[nodiscard]] float y_of(int slot) const {
        return label_margin_px + step_ * (static_cast<float>(slot) + 0.5F);
    }

    // By slot: leaders' length, and what the box would hide.
    [[nodiscard]] std::vector<float> slot_costs(const Column& column,
                                                const ColumnName& name) const {
        std::vector<float> costs(static_cast<std::size_t>(slots_), never);
        for (int slot = 0; slot < slots_; ++slot) {
            const PixelBox box = box_in(column, name, y_of(slot));
            if (!has_room(box)) continue;
            float cost = hidden_cost_px * sums_.share_under(box);
            if (meet(box, cover_.core)) cost += core_cost_px;
            for (const glm::vec2 place : places_of(name, column))
                for (const PixelBox& words : cover_.taken)
                    if (crosses(place, {column.x, y_of(slot)}, words)) cost += over_words_px;
            for (const glm::vec2 place : places_of(name, column))
                cost += glm::distance(place, {column.x, y_of(slot)});
            costs[static_cast<std::size_t>(slot)] = cost;
        }
        return costs;
    }

    [[nodiscard]] bool has_room(const PixelBox& box) const {
        if (box.low.x < label_margin_px || box.low.y < label_margin_px
            || box.high.x > viewport_.width - label_margin_px
            || box.high.y > viewport_.height - label_margin_px)
            return false;
        const PixelBox wide{box.low - label_margin_px, box.high + label_margin_px};
        return std::none_of(cover_.taken.begin(), cover_.taken.end(),
                            [&](const PixelBox& other) { return meet(wide, other); });
    }
    [[nodiscard]] static bool meet(const PixelBox& a, const PixelBox& b) {
        return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
    }
    [[nodiscard]] static const std::vector<glm::vec2>& places_of(const ColumnName& name,
                                                                 const Column& column) {
        return name.places[column.is_left ? 0 : 1];
    }

    // Two leaders to one column, the upper name's and the lower one's, keep apart when they do where the nearer of the
    // two places stands: that bounds the end of the leader from the farther one.
    void keep_apart(const Column& column,
                    const std::array<glm::vec2, 2>& places,
                    const std::array<Span*, 2>& ends) const {
        const float towards = column.is_left ? -1.0F : 1.0F;
        const bool lower_is_nearer = towards * (places[1].x - places[0].x) >= 0;
        const glm::vec2 far = places[lower_is_nearer ? 0 : 1];
        const glm::vec2 near = places[lower_is_nearer ? 1 : 0];
        const float share = (near.x - far.x) / (column.x - far.x);
        const float wanted = near.y + (lower_is_nearer ? -clear_of_leader : clear_of_leader);
        Span& end = *ends[lower_is_nearer ? 0 : 1];
        if (share < 1e-4F) {
            if (lower_is_nearer ? far.y > wanted : far.y < wanted) end = {never, -never};
            return;
        }
        const float bound = far.y + (wanted - far.y) / share;
        if (lower_is_nearer)
            end.high = std::min(end.high, bound);
        else
            end.low = std::max(end.low, bound);
    }

    [[nodiscard]] std::vector<Span> spans_of(const std::vector<std::size_t>& from_top,
                                             const Column& column) const {
        std::vector<Span> spans(from_top.size());
        for (std::size_t upper = 0; upper < from_top.size(); ++upper)
            for (std::size_t lower = upper + 1; lower < from_top.size(); ++lower)
                for (const glm::vec2 a : places_of(names_[from_top[upper]], column))
                    for (const glm::vec2 b : places_of(names_[from_top[lower]], column))
                        keep_apart(column, {a, b}, {&spans[upper], &spans[lower]});
        return spans;
    }

    // The cheapest slots from top to bottom that leave each box its room (dynamic programming over the slots).
    [[nodiscard]] std::optional<Stack> solved(const Group& group) const {
        std::vector<std::size_t> from_top(group.end - group.first);
        std::iota(from_top.begin(), from_top.end(), group.first);
        if (!group.runs_down) std::reverse(from_top.begin(), from_top.end());
        const Column& column = columns_[group.column];
        const std::vector<Span> spans = spans_of(from_top, column);
        const auto count = static_cast<std::size_t>(slots_);
        std::vector<float> above(count,
                                 0);  // the cheapest with its last name at this slot or higher
        std::vector<std::vector<int>> chosen;
        float least = 0;
        for (std::size_t i = 0; i < from_top.size(); ++i) {
            const std::vector<float>& costs = costs_[group.column * names_.size() + from_top[i]];
            const int apart = i == 0 ? 0 : slots_between(from_top[i - 1], from_top[i]);
            std::vector<float> now(count, never);
            std::vector<int> where(count, -1);
            for (int slot = apart; slot < slots_; ++slot) {
                const auto at = static_cast<std::size_t>(slot);
                const float y = y_of(slot);
                const float cost = y < spans[i].low || y > spans[i].high
                                       ? never
                                       : costs[at] + above[static_cast<std::size_t>(slot - apart)];
                const bool is_better = slot == apart || cost < now[at - 1];
                now[at] = is_better ? cost : now[at - 1];
                where[at] = is_better ? slot : where[at - 1];
            }
            above = std::move(now);
            chosen.push_back(std::move(where));
            least = above.back();
        }
        if (least == never) return std::nullopt;
        return stacked(from_top, chosen, column, least);
    }

    [[nodiscard]] int slots_between(std::size_t upper, std::size_t lower) const {
        const ColumnName& a = names_[upper];
        const float apart = a.size.y - attach_of(a) + attach_of(names_[lower]) + unit_;
        return static_cast<int>(std::ceil(apart / step_));
    }

    [[nodiscard]] Stack stacked(const std::vector<std::size_t>& from_top,
                                const std::vector<std::vector<int>>& chosen,
                                const Column& column,
                                float cost) const {
        Stack stack{cost, {}};
        int slot = slots_ - 1;
        for (std::size_t i = from_top.size(); i-- > 0;) {
            slot = chosen[i][static_cast<std::size_t>(slot)];
            const glm::vec2 leader{column.x, y_of(slot)};
            stack.names.push_back({from_top[i], box_in(column, names_[from_top[i]], leader.y),
                                   column.is_left, leader});
            if (i > 0) slot -= slots_between(from_top[i - 1], from_top[i]);
        }
        return stack;
    }

    [[nodiscard]] std::optional<Stack> cheapest(Group group, bool is_left) const {
        if (group.first == group.end) return Stack{};
        std::optional<Stack> found;
        for (group.column = is_left ? 0 : 1; group.column < columns_.size(); group.column += 2) {
            auto stack = solved(group);
            if (stack && (!found || stack->cost < found->cost)) found = std::move(stack);
        }
        return found;
    }

    // Once round the picture: down the one side and up the other.
    void try_split(std::size_t split,
                   bool left_first,
                   bool runs_down,
                   std::optional<Stack>& found) const {
        auto first = cheapest({0, split, 0, runs_down}, left_first);
        if (!first || (found && first->cost >= found->cost)) return;
        const auto second = cheapest({split, names_.size(), 0, !runs_down}, !left_first);
        if (!second) return;
        first->cost += second->cost;
        if (found && first->cost >= found->cost) return;
        if (is_tangled(*first, *second)) return;
        first->names.insert(first->names.end(), second->names.begin(), second->names.end());
        found = std::move(first);
    }

    [[nodiscard]] bool is_tangled(const Stack& one, const Stack& other) const {
        for (const NameInColumn& a : one.names)
            for (const NameInColumn& b : other.names)
                for (const glm::vec2 from_a : names_[a.name].places[a.is_left ? 0 : 1])
                    for (const glm::vec2 from_b : names_[b.name].places[b.is_left ? 0 : 1])
                        if (stretches_meet(from_a, a.leader, from_b, b.leader)
                            || crosses(from_a, a.leader, b.box) || crosses(from_b, b.leader, a.box))
                            return true;
        return false;
    }

    std::vector<ColumnName> names_;
    Viewport viewport_;
    const LightCover& cover_;
    CoverSums sums_;
    float unit_ = 4;
    float step_ = 6;
    int slots_ = 1;
    std::vector<Column> columns_;
    std::vector<std::vector<float>> costs_;  // by column, then by name: of each slot
};

// The least important one, the last of several.
std::size_t least_of(std::span<const ColumnName> names, const std::vector<std::size_t>& kept) {
    std::size_t least = 0;
    for (std::size_t i = 1; i < kept.size(); ++i)
        if (names[kept[i]].priority >= names[kept[least]].priority) least = i;
    return least;
}

}  // namespace

bool stretches_meet(glm::vec2 a, glm::vec2 b, glm::vec2 c, glm::vec2 d) {
    const auto side = [](glm::vec2 from, glm::vec2 to, glm::vec2 at) {
        return (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
    };
    return (side(a, b, c) > 0) != (side(a, b, d) > 0) && (side(c, d, a) > 0) != (side(c, d, b) > 0);
}

std::vector<NameInColumn>
lay_out_columns(std::span<const ColumnName> names, Viewport viewport, const LightCover& cover) {
    std::vector<std::size_t> kept(names.size());
    std::iota(kept.begin(), kept.end(), std::size_t{0});
    while (!kept.empty()) {
        if (kept.size() <= most_names) {
            std::vector<ColumnName> wanted;
            for (const std::size_t name : kept)
                wanted.push_back(names[name]);
            if (auto found = ColumnSearch(std::move(wanted), viewport, cover).best()) {
                for (NameInColumn& name : found->names)
                    name.name = kept[name.name];
                return found->names;
            }
        }
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(least_of(names, kept)));
    }
    return {};
}

}  // namespace beamfork
