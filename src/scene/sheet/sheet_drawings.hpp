// The drawings of the printed sheet as SVG text: the same data as the window's picture and panels, in ink that
// reads in black and white (assets/sheet.css has the classes).
#pragma once

#include <string>

#include "scene/picture/picture.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

/// The train to one scale: from the side, and what hangs on the drawtube larger, with both arms beside each other.
/// Parts carry their numbers in the part table, counted from 1.
std::string sheet_side_view(const Setup& setup, const Report& report);
std::string sheet_head_view(const Setup& setup, const Report& report);

/// The train straightened, both eyes, heights drawn larger: scene/unfolded_path/unfolded_path_rows.hpp.
std::string sheet_unfolded_path(const Setup& setup, const Report& report);

/// The focus budget as a waterfall, with the drawtube's travel below it.
std::string sheet_focus_budget(const Report& report);

/// How bright each place of the field is, for each eye.
std::string sheet_light_curves(const Setup& setup, const Report& report);

}  // namespace beamfork
