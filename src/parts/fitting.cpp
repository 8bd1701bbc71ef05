#include "parts/fitting.hpp"

#include <algorithm>
#include <array>

namespace beamfork {

namespace {

constexpr std::array words{
    "unstated",
    "own",
    "0.965 in barrel",
    "0.965 in holder",
    "1.25 in barrel",
    "1.25 in holder",
    "2 in barrel",
    "2 in holder",
    "M42x0.75 male",
    "M42x0.75 female",
    "M48x0.75 male",
    "M48x0.75 female",
    "2 in-24 male",
    "2 in-24 female",
    "1.25 in filter male",
    "1.25 in filter female",
    "M42x1 male",
    "M42x1 female",
};
static_assert(words.size() == static_cast<std::size_t>(Fitting::camera_m42_female) + 1);

bool is_claimed(Fitting fitting) { return fitting != Fitting::unstated; }

bool is_t_thread(Fitting fitting) {
    return fitting == Fitting::m42_male || fitting == Fitting::m42_female;
}
bool is_camera_thread(Fitting fitting) {
    return fitting == Fitting::camera_m42_male || fitting == Fitting::camera_m42_female;
}

}  // namespace

std::vector<std::string> fitting_words() { return {words.begin(), words.end()}; }

std::string to_word(Fitting fitting) { return words.at(static_cast<std::size_t>(fitting)); }

Fitting mate_of(Fitting fitting) {
    const int index = static_cast<int>(fitting);
    if (index < static_cast<int>(Fitting::barrel_0965)) return fitting;
    return static_cast<Fitting>(index % 2 == 0 ? index + 1 : index - 1);
}

bool fits(Fitting one, Fitting other) {
    if (!is_claimed(one) || !is_claimed(other)) return true;
    return other == mate_of(one);
}

bool is_false_friend(Fitting one, Fitting other) {
    return (is_t_thread(one) && is_camera_thread(other))
           || (is_camera_thread(one) && is_t_thread(other));
}

std::optional<Fitting> screws_into_barrel(Fitting barrel) {
    if (barrel == Fitting::barrel_125) return Fitting::filter_125_male;
    if (barrel == Fitting::barrel_2) return Fitting::m48_male;
    return std::nullopt;
}

}  // namespace beamfork
