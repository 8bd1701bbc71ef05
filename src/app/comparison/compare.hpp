// `beamfork compare`: two setups side by side, as text or JSON.
#pragma once

#include <string>

#include "study/findings/report.hpp"

namespace beamfork {

struct ReportedSetup {
    const Setup& setup;
    const Report& report;
};

std::string comparison_text(const ReportedSetup& here, const ReportedSetup& there);
/// Numbers in the units that are named; "better" is "first", "second" or null.
std::string comparison_json(const ReportedSetup& here, const ReportedSetup& there);

}  // namespace beamfork
