// “Describe my setup”: a few questions, each of which may stay unanswered, that end in a setup to work on.
#pragma once

#include <map>
#include <string>

#include "document/described_setup.hpp"

namespace beamfork {

struct Ui;

struct DescribeDialog {
    SetupAnswers answers;                      ///< its kinds; numbers are as typed below
    std::map<std::string, std::string> typed;  ///< by the question's key; empty: not known
    std::string error;
    bool opened = false;  ///< the popup is up
};

void start_describe_dialog(const Ui& ui);
/// Draws the dialog while there is one.
void draw_describe_dialog(const Ui& ui);

}  // namespace beamfork
