// What the panel "compare" shows and asks for.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "scene/comparison/companion.hpp"

namespace beamfork {

struct ComparedSetup;
struct ComparisonRows;
struct Ui;

/// Something that the open setup can be held against.
struct ComparisonChoice {
    std::string key;    ///< "opened", "before", "kept", "demo:…", "file:…"
    std::string label;  ///< on screen
    std::string help;
};

struct ComparisonRequest {
    std::string key;  ///< of a choice
    CompanionPlace place = CompanionPlace::none;
    bool operator==(const ComparisonRequest&) const = default;
};

struct ComparisonRequests {
    std::optional<ComparisonRequest> shown;  ///< none: compared with nothing
    bool keeps = false;                      ///< the setup as it is now is kept aside
};

/// What is true of it now.
struct ComparisonView {
    std::vector<ComparisonChoice> choices;
    std::shared_ptr<const ComparedSetup> other;  ///< null: none, or it makes no train ...
    std::string problem;                         ///< ... and why
};

/// The open setup held against the other, of which there must be one.
ComparisonRows compared_rows(const Ui& ui, const ComparisonView& view);

}  // namespace beamfork
