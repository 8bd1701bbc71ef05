// The printed sheet: one HTML page with everything to take to the telescope, complete in itself (no script, nothing
// from outside), well-formed as XML too. The setup's own text lies in it word for word, so that the setup can be had
// back from the page (document/setup_in_page.hpp).
#pragma once

#include <string>
#include <vector>

#include "document/document.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

struct SheetOptions {
    bool night = false;  ///< dim red on black, for eyes that are used to the dark
    std::vector<std::uint8_t>
        moon_png{};  ///< what both eyes see, side by side; empty: the page has no such picture
};

/// `report` is of the document's setup as chosen; cures stand on the page where they have been sought.
std::string
sheet_page(const Document& document, const Report& report, const SheetOptions& options = {});

/// One thing to do at the telescope.
struct SheetStep {
    std::string heading;
    std::string text;
    std::vector<std::string> items;  ///< in this order; may be empty
};

/// From the empty tube to the first look: order of mounting, balance, pupil distance, drawtube, seats.
std::vector<SheetStep> sheet_steps(const Setup& setup, const Report& report);

/// A caution: its subject and what to heed. The same for every setup.
struct SheetCaution {
    std::string subject;
    std::string text;
};
std::vector<SheetCaution> sheet_cautions();

// Sections of the page as HTML text (sheet_tables.cpp).
std::string sheet_part_table(const Setup& setup);
std::string sheet_numbers(const Setup& setup, const Report& report);
std::string sheet_findings(const Report& report);
std::string sheet_reach_table(const Setup& setup, const Report& report);

}  // namespace beamfork
