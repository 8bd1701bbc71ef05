// What the panel of tours keeps from frame to frame.
#pragma once

#include <compare>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>

namespace beamfork {

/// Where a text of a tour is written: "caption", "notes", "question", "answer 1" .. of that step.
struct TourTextPlace {
    std::string tour;  ///< its name
    std::size_t step = 0;
    std::string entry;
    auto operator<=>(const TourTextPlace&) const = default;
};

struct TourEditState {
    std::size_t tour = 0;  ///< of the document's
    std::size_t step = 0;
    /// As typed, until they can be taken; whichever step is shown.
    std::map<TourTextPlace, std::string> drafts{};

    std::string tell_wanted{};  ///< the name of a tour that is to be told

    /// The steps of that tour have moved: drafts go with theirs, or go where theirs is gone (nothing).
    void move_drafts(const std::string& of_tour,
                     const std::function<std::optional<std::size_t>(std::size_t)>& where_now);
};

}  // namespace beamfork
