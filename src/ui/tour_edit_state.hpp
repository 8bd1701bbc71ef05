// What the panel of tours keeps from frame to frame.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace beamfork {

struct TourEditState {
    std::size_t tour = 0;  ///< of the document's
    std::size_t step = 0;
    std::optional<std::string> caption{};  ///< as typed, until it is taken
    std::optional<std::string> notes{};    ///< likewise
};

}  // namespace beamfork
