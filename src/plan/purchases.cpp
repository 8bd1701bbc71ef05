#include "plan/purchases.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/two_at_a_time.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/mount.hpp"
#include "parts/newtonian.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"

#include <fmt/format.h>

namespace beamfork {

std::size_t Purchase::firsts() const {
    const auto served = std::count_if(improvements.begin(), improvements.end(),
                                      [](const Improvement& one) { return !one.before; });
    return telescopes.size() + static_cast<std::size_t>(served);
}

double Purchase::gain() const {
    double sum = 0;
    for (const Improvement& one : improvements)
        sum += one.before ? std::min(1.0, one.with_it.score / one.before->score - 1) : 0;
    return sum;
}

namespace {

using Combination = std::vector<std::size_t>;

// What comes together, whatever stands between: telescope, diagonals, head and pair.
std::set<Combination> combinations(const Plan& plan) {
    std::set<Combination> found;
    const std::uint64_t asked = plan.sky_uses() != 0 ? plan.sky_uses() : plan.all_uses();
    for (const PlannedTrain& train : plan.trains) {
        const Chain& chain = plan.chain_of(train);
        if ((train.reached & asked) != asked || chain.lens_in_glass) continue;
        Combination one{plan.tube_of(train).telescope, plan.head_of(train).part,
                        plan.pair_of(train).part};
        for (const std::size_t i : chain.parts) {
            if (plan.parts.chain[i].turns_light) one.push_back(plan.parts.chain[i].part);
        }
        found.insert(std::move(one));
    }
    return found;
}

// The two ends stay open: an adapter may be wanted, too.
Offer usual(std::string name, PartBody body) {
    Offer offer{{{std::move(name), std::move(body), {}}}, true};
    offer.part.wanted = true;
    return offer;
}

// A thin lens that has that factor a usual light path, 115 mm, before the field stop.
Offer usual_shifter(double factor) {
    constexpr double usual_distance = 115;
    Shifter lens;
    lens.given = ShifterGiven::focal_length;
    lens.focal_length = Millimetres{usual_distance / (1 - factor)};
    lens.lens_offset = Millimetres{2};
    lens.length = Millimetres{4};
    lens.clear_diameter = Millimetres{26};
    return usual(fmt::format("a {:g}× shifter", factor), lens);
}

Offer usual_pair(double focal_length) {
    EyepiecePair pair;
    const double field = focal_length > 24 ? 50 : 60;
    constexpr double most_in_barrel = 27;
    pair.focal_length = Millimetres{focal_length};
    pair.apparent_field = Degrees{field};
    pair.field_stop = Millimetres{std::min(
        most_in_barrel, 2 * focal_length * std::tan(to_radians(Degrees{field / 2}).value))};
    return usual(fmt::format("a {:g} mm, {:g}° pair", focal_length, field), pair);
}

void add_usual_focusers(std::vector<Offer>& all, const Drawer& drawer) {
    constexpr double lower = 40;  // as study/ways_to_focus has it
    for (const std::size_t i : parts_with_role(drawer, Role::focuser)) {
        const auto telescope = telescope_of_focuser(drawer, i);
        if (!telescope || !drawer.parts[*telescope].part.body.is<Newtonian>()
            || drawer.parts[i].wanted)
            continue;
        DrawerPart part = drawer.parts[i];
        part.wanted = true;
        part.price.reset();
        part.sits_on = drawer.parts[*telescope].part.name;
        part.lower_by = part.lower_by + Millimetres{lower};
        part.part.name = fmt::format("a focuser {:g} mm lower on the {}", lower, part.sits_on);
        all.push_back({std::move(part), true});
    }
}

// Telescopes of the drawer that come to focus in one of these.
std::set<std::size_t> telescopes_in(const std::set<Combination>& combinations) {
    std::set<std::size_t> found;
    for (const Combination& one : combinations)
        found.insert(one.front());
    return found;
}

class PurchaseSearch {
public:
    PurchaseSearch(const Plan& owned, const std::vector<BestForPurpose>& best, PlanScope scope)
        : owned_(owned),
          best_(best),
          scope_(std::move(scope)),
          reached_(combinations(owned)),
          telescopes_(telescopes_in(reached_)) {}

    /// What those open together; nothing where it is nothing.
    [[nodiscard]] Result<std::optional<Purchase>> look_at(std::vector<Offer> parts) const {
        Drawer drawer = owned_.drawer;
        std::vector<std::size_t> places;
        for (const Offer& offer : parts) {
            places.push_back(drawer.parts.size());
            drawer.parts.push_back(offer.part);
            drawer.parts.back().wanted = true;
        }
        const auto plan = plan_with(std::move(drawer), scope_, places);
        if (!plan) return tl::make_unexpected(plan.error());
        Purchase found{.parts = std::move(parts)};
        const auto together = combinations(*plan);
        for (const Combination& one : together)
            found.newly_reaching += reached_.contains(one) ? 0 : 1;
        for (const std::size_t telescope : telescopes_in(together)) {
            if (telescopes_.contains(telescope)) continue;
            if (auto opened = opening(*plan, telescope))
                found.telescopes.push_back(*std::move(opened));
        }
        for (const BestForPurpose& best : best_) {
            if (auto better = improvement(*plan, best))
                found.improvements.push_back(*std::move(better));
        }
        if (found.improvements.empty() && found.telescopes.empty()) return std::nullopt;
        return found;
    }

    /// Owned telescopes that come to focus with nothing owned.
    [[nodiscard]] std::set<std::size_t> closed_telescopes() const {
        std::set<std::size_t> closed;
        for (const Tube& tube : owned_.parts.tubes) {
            if (!telescopes_.contains(tube.telescope)) closed.insert(tube.telescope);
        }
        return closed;
    }

private:
    static constexpr int most_trials = 3;

    static std::optional<OpenedTelescope> opening(const Plan& plan, std::size_t telescope) {
        for (const Purpose& purpose : purposes()) {
            if (purpose.is_near) continue;
            int trials = 0;
            for (const Candidate& one : not_outdone(candidates(plan, purpose))) {
                if (plan.tube_of(plan.trains[one.train]).telescope != telescope) continue;
                if (++trials > most_trials) break;
                std::string why_not;
                if (auto train = tried(plan, one, purpose, why_not))
                    return OpenedTelescope{plan.part(telescope).name, *std::move(train)};
            }
        }
        return std::nullopt;
    }

    // The first of those that promise more than what is owned and hold it when they are tried.
    static std::optional<Improvement> improvement(const Plan& plan, const BestForPurpose& best) {
        constexpr double notable = 1.05;
        const double now = best.trains.empty() ? 0 : best.trains.front().score;
        int trials = 0;
        for (const Candidate& one : not_outdone(candidates(plan, best.purpose))) {
            if (one.score < notable * now || ++trials > most_trials) break;
            std::string why_not;
            auto train = tried(plan, one, best.purpose, why_not);
            if (!train || train->score < notable * now) continue;
            Improvement found{.purpose = best.purpose, .with_it = *std::move(train)};
            if (!best.trains.empty()) found.before = best.trains.front();
            return found;
        }
        return std::nullopt;
    }

    const Plan& owned_;
    const std::vector<BestForPurpose>& best_;
    PlanScope scope_;
    std::set<Combination> reached_;
    std::set<std::size_t> telescopes_;
};

bool is_usual(const Purchase& purchase) {
    return std::any_of(purchase.parts.begin(), purchase.parts.end(),
                       [](const Offer& offer) { return offer.is_usual; });
}

// What is opened for the first time counts most, then by how much better the rest is; of two alike the wanted part, whose
// sizes are known.
bool comes_before(const Purchase& a, const Purchase& b) {
    if (a.firsts() != b.firsts()) return a.firsts() > b.firsts();
    constexpr double alike = 0.02;
    if (std::abs(a.gain() - b.gain()) > alike) return a.gain() > b.gain();
    return !is_usual(a) && is_usual(b);
}

Result<std::vector<Purchase>> look_at_all(const PurchaseSearch& search,
                                          const std::vector<std::vector<Offer>>& offered) {
    std::vector<Result<std::optional<Purchase>>> looked(offered.size(), std::nullopt);
    two_at_a_time(offered.size(), [&](std::size_t i) { looked[i] = search.look_at(offered[i]); });
    std::vector<Purchase> found;
    for (auto& one : looked) {
        if (!one) return tl::make_unexpected(one.error());
        if (one->has_value()) found.push_back(std::move(**one));
    }
    return found;
}

// What gives light path back: two of these may bring a telescope to focus where one does not.
std::vector<std::vector<Offer>> in_twos(const std::vector<Offer>& offers) {
    std::vector<Offer> helpful;
    for (const Offer& offer : offers) {
        const bool is_shifter = offer.part.part.body.is<Shifter>();
        if (is_shifter || offer.part.part.body.is<Focuser>()) helpful.push_back(offer);
    }
    std::vector<std::vector<Offer>> twos;
    for (std::size_t i = 0; i < helpful.size(); ++i) {
        for (std::size_t j = i + 1; j < helpful.size(); ++j) {
            if (helpful[i].part.part.body.index() != helpful[j].part.part.body.index())
                twos.push_back({helpful[i], helpful[j]});
        }
    }
    return twos;
}

}  // namespace

std::vector<Offer> usual_parts(const Drawer& drawer) {
    std::vector<Offer> all;
    const auto is_near = [](double a, double b) { return std::abs(a / b - 1) < 0.15; };
    for (const double factor : {1.25, 1.6, 2.0, 2.6}) {
        const bool has =
            std::any_of(drawer.parts.begin(), drawer.parts.end(), [&](const DrawerPart& held) {
                const auto* lens = held.part.body.as<Shifter>();
                return lens != nullptr && lens->given == ShifterGiven::factor_and_gain
                       && is_near(lens->stated_factor, factor);
            });
        if (!has) all.push_back(usual_shifter(factor));
    }
    for (const double focal_length : {6.0, 8.0, 10.0, 15.0, 20.0, 32.0, 40.0}) {
        const bool has =
            std::any_of(drawer.parts.begin(), drawer.parts.end(), [&](const DrawerPart& held) {
                const auto* pair = held.part.body.as<EyepiecePair>();
                return pair != nullptr && is_near(pair->focal_length.value, focal_length);
            });
        if (!has) all.push_back(usual_pair(focal_length));
    }
    for (const double length : {10.0, 20.0, 40.0}) {
        Spacer tube;
        tube.length = Millimetres{length};
        all.push_back(usual(fmt::format("an extension of {:g} mm", length), tube));
    }
    PrismDiagonal diagonal;
    diagonal.stated_light_path = Millimetres{38};
    all.push_back(usual("a prism diagonal of 38 mm light path", diagonal));
    add_usual_focusers(all, drawer);
    return all;
}

Result<std::vector<Purchase>> purchases(const Plan& owned,
                                        const std::vector<BestForPurpose>& best,
                                        const PlanScope& scope,
                                        std::size_t most) {
    std::vector<Offer> offers;
    for (const DrawerPart& held : owned.drawer.parts) {
        if (held.wanted) offers.push_back({held});
    }
    for (Offer& offer : usual_parts(owned.drawer))
        offers.push_back(std::move(offer));
    std::vector<std::vector<Offer>> singles;
    for (const Offer& offer : offers)
        singles.push_back({offer});
    const PurchaseSearch search(owned, best, scope);
    auto found = look_at_all(search, singles);
    if (!found) return found;
    const bool all_open = search.closed_telescopes().empty()
                          || std::any_of(found->begin(), found->end(), [](const Purchase& one) {
                                 return !one.telescopes.empty();
                             });
    if (!all_open) {
        auto twos = look_at_all(search, in_twos(offers));
        if (!twos) return twos;
        std::move(twos->begin(), twos->end(), std::back_inserter(*found));
    }
    std::stable_sort(found->begin(), found->end(), comes_before);
    if (found->size() > most) found->erase(found->begin() + static_cast<long>(most), found->end());
    return found;
}

}  // namespace beamfork
