#include "scene/unfolded_path/unfolded_path_view.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/contract.hpp"

namespace beamfork {

namespace {

constexpr std::array round_factors{0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0};
constexpr double smallest_px_per_mm = 0.05;
constexpr double largest_px_per_mm = 400;

}  // namespace

UnfoldedView fit_view(const UnfoldedPathRows& rows, double width, double height) {
    BEAMFORK_EXPECTS(width > 0 && height > 0);
    const double along = width / (rows.fit_to - rows.fit_from);
    const double most_across = height / (2 * rows.fit_height);
    UnfoldedView view;
    view.px_per_mm = std::clamp(std::min(along, most_across / round_factors.front()),
                                smallest_px_per_mm, largest_px_per_mm);
    view.across = round_factors.front();
    for (const double factor : round_factors) {
        if (view.px_per_mm * factor <= most_across) view.across = factor;
    }
    view.left = rows.fit_to - width / view.px_per_mm;
    return view;
}

UnfoldedView zoomed(const UnfoldedView& view, double factor, double x, double y) {
    UnfoldedView next = view;
    next.px_per_mm = std::clamp(view.px_per_mm * factor, smallest_px_per_mm, largest_px_per_mm);
    next.left = view.place_at(x) - x / next.px_per_mm;
    next.middle = view.height_at(y) + y / (next.px_per_mm * next.across);
    return next;
}

UnfoldedView panned(const UnfoldedView& view, double dx, double dy) {
    UnfoldedView next = view;
    next.left -= dx / view.px_per_mm;
    next.middle += dy / (view.px_per_mm * view.across);
    return next;
}

double tick_step(const UnfoldedView& view, double least_px) {
    const double least = least_px / view.px_per_mm;
    const double decade = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * decade >= least) return factor * decade;
    }
    return 10 * decade;
}

std::vector<double> lane_places(const std::vector<LaneWord>& words, double room, double gap) {
    // Words that touch move as one: each group stands where the mean of its words wants it.
    struct Group {
        std::size_t first = 0;
        std::size_t count = 0;
        double left = 0;
        double width = 0;
        double wanted_sum = 0;  ///< of left ends, were the group to begin there
    };
    std::vector<Group> groups;
    const auto settle = [&](Group& group) {
        group.left = group.wanted_sum / static_cast<double>(group.count);
        group.left = std::max(0.0, std::min(group.left, room - group.width));
    };
    for (std::size_t i = 0; i < words.size(); ++i) {
        Group group{i, 1, 0, words[i].width, words[i].wanted - words[i].width / 2};
        settle(group);
        while (!groups.empty() && groups.back().left + groups.back().width + gap > group.left) {
            Group merged = groups.back();
            const double shift = merged.width + gap;
            merged.wanted_sum += group.wanted_sum - static_cast<double>(group.count) * shift;
            merged.count += group.count;
            merged.width += gap + group.width;
            settle(merged);
            groups.pop_back();
            group = merged;
        }
        groups.push_back(group);
    }
    std::vector<double> places;
    for (const Group& group : groups) {
        double left = group.left;
        for (std::size_t i = group.first; i < group.first + group.count; ++i) {
            places.push_back(left);
            left += words[i].width + gap;
        }
    }
    return places;
}

double lane_limit(const std::vector<LaneWord>& words, double room, double gap) {
    std::vector<double> widths;
    for (const LaneWord& word : words)
        widths.push_back(word.width);
    std::sort(widths.begin(), widths.end());
    double left = room - gap * static_cast<double>(words.empty() ? 0 : words.size() - 1);
    // The narrow ones keep their width; what is left is shared by the others.
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const double share = std::max(0.0, left / static_cast<double>(widths.size() - i));
        if (widths[i] > share) return share;
        left -= widths[i];
    }
    return widths.empty() ? 0 : widths.back();
}

}  // namespace beamfork
