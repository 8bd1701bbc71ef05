#include "plan/tonight.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <set>

#include "plan/planned_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

std::size_t TonightsRow::exchanges() const {
    std::size_t sum = 0;
    for (const RowStep& step : steps)
        sum += step.exchanges;
    return sum;
}

namespace {

using PartList = std::vector<std::size_t>;

PartList without(const PartList& parts, const PartList& others) {
    PartList left;
    for (const std::size_t part : parts) {
        if (std::find(others.begin(), others.end(), part) == others.end()) left.push_back(part);
    }
    return left;
}

// What both have, in the order in which the first has it.
PartList common(const PartList& parts, const PartList& others) {
    return without(parts, without(parts, others));
}

// Parts that both have and that stand elsewhere among the others that both have: the first by which the rest agrees,
// else all from where they differ.
PartList moved(const PartList& before, const PartList& after) {
    const PartList then = common(before, after);
    const PartList now = common(after, before);
    if (then == now) return {};
    for (const std::size_t part : now) {
        if (without(then, {part}) == without(now, {part})) return {part};
    }
    const auto differ = std::mismatch(now.begin(), now.end(), then.begin(), then.end()).first;
    return {differ, now.end()};
}

// A train as one link of a row.
struct Link {
    Candidate candidate;
    PartList parts;
    double power = 0;
};

// Of trains that differ in spacers alone the one with the most room, then of the fewest pieces.
std::vector<Link> links_of(const Plan& plan, const std::vector<Candidate>& candidates) {
    std::map<PartList, Link> best;
    for (const Candidate& one : candidates) {
        const PlannedTrain& train = plan.trains[one.train];
        PartList key{plan.head_of(train).part, plan.pair_of(train).part};
        for (const std::size_t i : plan.chain_of(train).parts) {
            if (!plan.parts.chain[i].is_spacer) key.push_back(i);
        }
        const auto known = best.find(key);
        const auto rank = [](const Candidate& of) {
            return std::tuple(-of.margin, of.pieces, of.train);
        };
        if (known != best.end() && rank(known->second.candidate) <= rank(one)) continue;
        best.insert_or_assign(std::move(key),
                              Link{one, plan.parts_of(train), one.sight.magnification});
    }
    std::vector<Link> links;
    for (auto& [key, link] : best)
        links.push_back(std::move(link));
    std::stable_sort(links.begin(), links.end(),
                     [](const Link& a, const Link& b) { return a.power < b.power; });
    return links;
}

bool is_useful(const Sight& sight) {
    constexpr Millimetres smallest_pupil{0.5};
    constexpr double most = 300;
    return sight.exit_pupil >= smallest_pupil && sight.exit_pupil <= sight.eye_pupil
           && sight.magnification <= most;
}

// What one step costs: its exchanges, and how far its ratio is from a pleasant one; nothing where it is no step.
std::optional<double> cost_of(const Link& from, const Link& to) {
    constexpr double least = 1.25;
    constexpr double most = 2.2;
    constexpr double pleasant = 1.6;
    constexpr double for_a_gap = 4;
    const double ratio = to.power / from.power;
    if (ratio < least) return std::nullopt;
    const double gap = ratio > most ? for_a_gap * std::log2(ratio / most) + 1 : 0;
    return static_cast<double>(exchanges_between(from.parts, to.parts)) + gap
           + std::abs(std::log2(ratio / pleasant));
}

// The cheapest way from about the least power to about the most (E. W. Dijkstra, A note on two problems in connexion with
// graphs, Numerische Mathematik 1, 269-271, 1959; powers grow, so each link is settled when its turn comes).
std::vector<Link> cheapest_row(const std::vector<Link>& links) {
    constexpr double about = 1.15;
    constexpr double never = std::numeric_limits<double>::infinity();
    if (links.empty()) return {};
    std::vector<double> cost(links.size(), never);
    std::vector<std::size_t> before(links.size());
    for (std::size_t i = 0; i < links.size(); ++i) {
        before[i] = i;
        if (links[i].power <= about * links.front().power) cost[i] = 0;
        for (std::size_t j = 0; j < i; ++j) {
            const auto step = cost_of(links[j], links[i]);
            if (!step || cost[j] + *step >= cost[i]) continue;
            cost[i] = cost[j] + *step;
            before[i] = j;
        }
    }
    std::size_t last = links.size() - 1;
    for (std::size_t i = 0; i < links.size(); ++i) {
        if (about * links[i].power >= links.back().power && cost[i] < cost[last]) last = i;
    }
    std::vector<Link> row{links[last]};
    for (; before[last] != last; last = before[last])
        row.push_back(links[before[last]]);
    std::reverse(row.begin(), row.end());
    return row;
}

std::string names_of(const Plan& plan, const PartList& parts) {
    std::string words;
    for (std::size_t i = 0; i < parts.size(); ++i)
        words += (i == 0 ? "the " : ", the ") + plan.part(parts[i]).name;
    return words;
}

std::vector<std::string> orders_between(const Plan& plan, const Link& from, const Link& to) {
    PartList out = without(from.parts, to.parts);
    PartList in = without(to.parts, from.parts);
    std::vector<std::string> orders;
    // Like is put in place of like.
    for (auto one = out.begin(); one != out.end();) {
        const auto like = std::find_if(in.begin(), in.end(), [&](std::size_t other) {
            return plan.part(other).body.index() == plan.part(*one).body.index();
        });
        if (like == in.end()) {
            ++one;
            continue;
        }
        orders.push_back(fmt::format("put the {} in place of the {}", plan.part(*like).name,
                                     plan.part(*one).name));
        in.erase(like);
        one = out.erase(one);
    }
    if (!out.empty()) orders.push_back("take out " + names_of(plan, out));
    const PartList elsewhere = moved(from.parts, to.parts);
    in.insert(in.end(), elsewhere.begin(), elsewhere.end());
    for (const std::size_t part : in) {
        const auto at = std::find(to.parts.begin(), to.parts.end(), part);
        orders.push_back(fmt::format("put the {} in front of the {}", plan.part(part).name,
                                     plan.part(*(at + 1)).name));
    }
    return orders;
}

// The row of those links, each tried; a link in which something fails is taken out and another row is sought.
std::vector<RowStep> tried_row(const Plan& plan, std::vector<Link> links) {
    std::map<std::size_t, TriedTrain> good;
    for (;;) {
        const auto row = cheapest_row(links);
        std::set<std::size_t> failing;
        for (const Link& link : row) {
            const std::size_t train = link.candidate.train;
            if (good.contains(train)) continue;
            std::string why_not;
            auto made = tried(plan, link.candidate, purposes().front(), why_not);
            if (made) {
                good.emplace(train, *std::move(made));
            } else {
                failing.insert(train);
            }
        }
        std::erase_if(links,
                      [&](const Link& one) { return failing.contains(one.candidate.train); });
        if (!failing.empty()) continue;
        std::vector<RowStep> steps;
        for (std::size_t i = 0; i < row.size(); ++i) {
            RowStep step{.train = good.at(row[i].candidate.train), .orders = {}};
            if (i == 0) {
                step.orders = {"join " + train_words(plan, step.train.train)};
            } else {
                step.orders = orders_between(plan, row[i - 1], row[i]);
                step.exchanges = exchanges_between(row[i - 1].parts, row[i].parts);
            }
            steps.push_back(std::move(step));
        }
        return steps;
    }
}

}  // namespace

std::size_t exchanges_between(const std::vector<std::size_t>& before,
                              const std::vector<std::size_t>& after) {
    return std::max(without(before, after).size(), without(after, before).size())
           + moved(before, after).size();
}

std::vector<TonightsRow> tonights_rows(const Plan& plan) {
    std::map<std::size_t, std::vector<Candidate>> of_telescope;
    for (const Candidate& one : candidates(plan, purposes().front())) {
        if (is_useful(one.sight))
            of_telescope[plan.tube_of(plan.trains[one.train]).telescope].push_back(one);
    }
    std::vector<TonightsRow> rows;
    for (const auto& [telescope, some] : of_telescope) {
        auto steps = tried_row(plan, links_of(plan, some));
        if (!steps.empty()) rows.push_back({plan.part(telescope).name, std::move(steps)});
    }
    return rows;
}

}  // namespace beamfork
