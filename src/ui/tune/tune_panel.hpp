// Vary one number and watch one result: its curve, and the value that gives what is wanted.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>

#include "ui/kit/ui.hpp"

namespace beamfork {

struct TuneQuestion;
struct TuneStudy;

struct TuneView {
    std::shared_ptr<const TuneStudy> study;  ///< as it was worked out last; null: not yet
};

/// Remembered.
struct TuneSession {
    std::string varied;              ///< "Adapter.length_mm"; another setup may not have it
    std::string watched = "margin";  ///< key of a watched result
    std::map<std::string, std::string> wanted{{"margin", "5"}};  ///< as typed, by that key
    bool whole_range = false;
};

struct TuneUi : Ui {
    const TuneView& view;
    TuneSession& session;
    std::optional<TuneQuestion>& asks;
};

void draw_tune_panel(const TuneUi& ui);

}  // namespace beamfork
