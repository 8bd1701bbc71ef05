#include "ui/picture/word_glide.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

void WordGlide::begin(Viewport viewport, float seconds) {
    constexpr float pace_s = 0.09F;
    constexpr float longest_step_s = 0.05F;  // after a rest
    if (!(viewport == viewport_)) places_.clear();
    viewport_ = viewport;
    share_ = 1 - std::exp(-std::min(seconds, longest_step_s) / pace_s);
    moves_ = false;
    for (auto& [words, place] : places_)
        place.is_drawn = false;
}

glm::vec2 WordGlide::place(const std::string& words, glm::vec2 wanted) {
    constexpr float there_px = 0.5F;
    const auto [found, is_new] = places_.try_emplace(words, Place{wanted, true});
    Place& place = found->second;
    place.is_drawn = true;
    if (is_new) return wanted;
    place.at += share_ * (wanted - place.at);
    if (glm::distance(place.at, wanted) < there_px)
        place.at = wanted;
    else
        moves_ = true;
    return place.at;
}

void WordGlide::end() {
    std::erase_if(places_, [](const auto& entry) { return !entry.second.is_drawn; });
}

std::map<std::string, glm::vec2> WordGlide::places() const {
    std::map<std::string, glm::vec2> all;
    for (const auto& [words, place] : places_)
        all.emplace(words, place.at);
    return all;
}

}  // namespace beamfork
