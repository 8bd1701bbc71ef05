#include "plan/chains.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "study/fit/joints.hpp"

namespace beamfork {

namespace {

// Joins working parts to whole chains, from the focuser to the head.
class ChainBuilder {
public:
    ChainBuilder(const DrawerParts& parts,
                 const Adapters& adapters,
                 std::size_t tube,
                 std::size_t head)
        : parts_(parts), adapters_(adapters), tube_(tube), head_(head) {}

    /// Leaves out what cannot be joined, and what has been built before.
    void offer(const PartRow& working) {
        auto joined = join(working);
        if (joined && known_.insert(joined->parts).second)
            chains_.push_back(lay_out(std::move(*joined)));
    }
    std::vector<Chain> take() { return std::move(chains_); }

private:
    [[nodiscard]] const ChainPart& part(std::size_t index) const { return parts_.chain[index]; }
    [[nodiscard]] const Head& head() const { return parts_.heads[head_]; }

    [[nodiscard]] std::optional<Chain> join(const PartRow& working) const {
        Chain chain{.tube = tube_, .head = head_};
        PartRow taken = working;
        Fitting before = parts_.tubes[tube_].rear;
        std::size_t screwed_in =
            0;  // how many parts at the end of the chain the next barrel takes up
        for (std::size_t i = 0; i <= working.size(); ++i) {
            const bool is_head = i == working.size();
            const Fitting front = is_head ? head().front : part(working[i]).front;
            if (!is_head && is_taken_up(working, i)) {
                chain.parts.push_back(working[i]);
                ++screwed_in;
                continue;
            }
            const auto row = adapters_.between(before, front, taken);
            if (!row) return std::nullopt;
            chain.parts.insert(chain.parts.end() - static_cast<long>(screwed_in), row->begin(),
                               row->end());
            taken.insert(taken.end(), row->begin(), row->end());
            if (before == Fitting::unstated || front == Fitting::unstated) ++chain.unstated_joints;
            if (is_head) break;
            chain.parts.push_back(working[i]);
            before = part(working[i]).rear;
            screwed_in = 0;
        }
        return chain;
    }

    [[nodiscard]] bool is_taken_up(const PartRow& working, std::size_t i) const {
        const bool is_last = i + 1 == working.size();
        const Fitting behind = is_last ? head().front : part(working[i + 1]).front;
        return screws_into_front_of(part(working[i]).rear, behind);
    }

    [[nodiscard]] Chain lay_out(Chain chain) const {
        double behind_last_face = parts_.tubes[tube_].behind_last_face;
        chain.mass = head().mass;
        for (std::size_t i = 0; i < chain.parts.size(); ++i) {
            const ChainPart& here = part(chain.parts[i]);
            chain.mass += here.mass;
            if (here.lens_focal_length) {
                const double at = placed_lens(chain, i, behind_last_face);
                chain.axis.add_lens(at, *here.lens_focal_length);
                chain.axis.add_length(here.length - at);
                behind_last_face = here.length - at;
            } else {
                chain.axis.add_length(here.length);
                behind_last_face = here.behind_last_face.value_or(behind_last_face + here.length);
            }
        }
        return chain;
    }

    // As train/lens_room.hpp has it: between the last face before it and the next one behind it.
    double placed_lens(Chain& chain, std::size_t at, double behind_last_face) const {
        const ChainPart& lens = part(chain.parts[at]);
        const double before = std::min(-behind_last_face, 0.0);
        double behind = lens.length;
        std::optional<double> face;
        for (std::size_t i = at + 1; i < chain.parts.size() && !face; ++i) {
            const ChainPart& next = part(chain.parts[i]);
            face = next.lens_focal_length ? std::optional(next.lens_at) : next.first_face;
            behind += face.value_or(next.length);
        }
        if (!face) behind += head().first_face;
        const double placed = std::clamp(lens.lens_at, before, std::max(before, behind));
        constexpr double touches = 1e-9;
        if (std::abs(placed - lens.lens_at) > touches) chain.lens_in_glass = true;
        return placed;
    }

    const DrawerParts& parts_;
    const Adapters& adapters_;
    std::size_t tube_;
    std::size_t head_;
    std::set<PartRow> known_;
    std::vector<Chain> chains_;
};

// What may stand in a chain, each with nothing ahead of the parts themselves.
struct Choices {
    std::vector<PartRow> diagonals{{}};
    std::vector<PartRow> correctors{{}};
    std::vector<PartRow> lenses;
    std::vector<PartRow> spacers;
};

Choices choices_of(const DrawerParts& parts, const Tube& tube) {
    Choices found;
    for (std::size_t i = 0; i < parts.chain.size(); ++i) {
        const ChainPart& one = parts.chain[i];
        if (one.is_corrector) {
            if (tube.takes_corrector) found.correctors.push_back({i});
        } else if (one.lens_focal_length) {
            found.lenses.push_back({i});
        } else if (one.turns_light) {
            found.diagonals.push_back({i});
        } else if (one.is_spacer) {
            found.spacers.push_back({i});
        }
    }
    return found;
}

PartRow in_a_row(std::initializer_list<const PartRow*> rows) {
    PartRow all;
    for (const PartRow* row : rows)
        all.insert(all.end(), row->begin(), row->end());
    return all;
}

// The group stands before the diagonal and behind it; without a diagonal that is the same.
void offer_both_sides(ChainBuilder& builder,
                      const PartRow& corrector,
                      const PartRow& diagonal,
                      const PartRow& group) {
    builder.offer(in_a_row({&corrector, &diagonal, &group}));
    if (!diagonal.empty() && !group.empty())
        builder.offer(in_a_row({&corrector, &group, &diagonal}));
}

}  // namespace

std::vector<Chain> chains_between(const DrawerParts& parts,
                                  const Adapters& adapters,
                                  std::size_t tube,
                                  std::size_t head) {
    ChainBuilder builder(parts, adapters, tube, head);
    const Choices choices = choices_of(parts, parts.tubes[tube]);
    for (const PartRow& corrector : choices.correctors) {
        for (const PartRow& diagonal : choices.diagonals) {
            offer_both_sides(builder, corrector, diagonal, {});
            for (const PartRow& spacer : choices.spacers)
                offer_both_sides(builder, corrector, diagonal, spacer);
            for (const PartRow& lens : choices.lenses) {
                offer_both_sides(builder, corrector, diagonal, lens);
                for (const PartRow& spacer : choices.spacers)
                    offer_both_sides(builder, corrector, diagonal, in_a_row({&lens, &spacer}));
            }
        }
    }
    return builder.take();
}

}  // namespace beamfork
