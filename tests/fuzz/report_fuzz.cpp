// The report, of few rays, on whatever can be read as a setup.
#include <cmath>

#include "document/setup_file.hpp"
#include "harness.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"

using namespace beamfork;

namespace {

bool has_no_number(const std::string& sentence) {
    return sentence.find("nan") != std::string::npos || sentence.find("n/a") != std::string::npos;
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto read = read_setup(fuzz::text_of(data, size), "fuzz");
    if (!read) return 0;
    const auto report = make_trial(read->document.setup, {16, LightForm::few_rays});
    if (!report) {
        fuzz::must(!report.error().what.empty(), "a refusal has a sentence");
        return 0;
    }
    for (const Finding& finding : report->findings) {
        fuzz::must(!finding.sentence.empty(), "a finding has a sentence");
        fuzz::must(!has_no_number(finding.sentence), "a number is told: " + finding.sentence);
    }
    const Magnification& seen = report->magnification;
    fuzz::must(seen.magnification > 0 && std::isfinite(seen.magnification),
               "a magnification is a number above 0");
    for (const EyeClipping& eye : report->clipping)
        fuzz::must(eye.edge_relative >= 0 && eye.edge_relative < 1.000001,
                   "a share is from 0 to 1");
    return 0;
}
