// The setup that the open one is held against, as it was worked out last.
#pragma once

#include <string>

#include "study/findings/report.hpp"

namespace beamfork {

struct ComparedSetup {
    std::string title;
    Setup setup;
    Report report;
};

}  // namespace beamfork
