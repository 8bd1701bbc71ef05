#include "study/fit/joints.hpp"

#include "parts/fitting.hpp"
#include "parts/mount.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string with_article(const std::string& end) {
    return (end.front() == 'o' || end.front() == 'M' ? "an " : "a ")
           + (end == "own" ? "end of its maker’s own" : end);
}

}  // namespace

bool screws_into_front_of(Fitting rear, Fitting front_behind) {
    const auto thread = screws_into_barrel(front_behind);
    return thread && rear == *thread;
}

std::vector<Joint> joints(const Setup& setup, const Choice& choice) {
    std::vector<std::size_t> joined;
    for (const std::size_t part : parts_in_light(setup, choice)) {
        if (role_of(setup.parts[part]) >= Role::focuser) joined.push_back(part);
    }
    const auto mount = [&](std::size_t part) {
        return mount_of(setup.parts[part].body).value_or(Mount{});
    };
    std::vector<Joint> found;
    std::size_t before = joined.front();
    for (std::size_t i = 1; i < joined.size(); ++i) {
        const Mount here = mount(joined[i]);
        const bool is_taken_up =
            i + 1 < joined.size() && screws_into_front_of(here.rear, mount(joined[i + 1]).front);
        if (is_taken_up) {
            // Its own joint is with the barrel; the part before meets the barrel itself.
            found.push_back({joined[i], joined[i + 1], here.rear, mate_of(here.rear)});
            continue;
        }
        found.push_back({before, joined[i], mount(before).rear, here.front});
        before = joined[i];
    }
    return found;
}

std::string adapter_between(Fitting rear, Fitting front) {
    return fmt::format("an adapter with {} in front and {} behind",
                       with_article(to_word(mate_of(rear))), with_article(to_word(mate_of(front))));
}

}  // namespace beamfork
