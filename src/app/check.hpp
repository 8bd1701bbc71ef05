// What `beamfork check` says of a setup: as text for people and as JSON for programs
// (assets/check.schema.json describes the JSON).
#pragma once

#include <string>
#include <vector>

#include "base/error.hpp"
#include "document/setup_file.hpp"
#include "study/report.hpp"

namespace beamfork {

/// One eyepiece pair with one observer and one target.
struct Combination {
    Choice choice;
    Report report;
};

struct CheckedSetup {
    Setup setup;
    std::vector<Combination> combinations;  ///< eyepieces outermost, then observers, then targets
    std::size_t chosen = 0;                 ///< the one the file chooses
    [[nodiscard]] bool is_poor() const;     ///< the chosen combination fails or is poor
};

/// Studies every eyepiece x observer x target.
Result<CheckedSetup> check_setup(const Setup& setup, ClippingEffort effort = {});

std::string check_text(const CheckedSetup& checked);
std::string check_json(const CheckedSetup& checked);

}  // namespace beamfork
