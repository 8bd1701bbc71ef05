#include "app/finders/cure_finder.hpp"

#include <utility>

#include "study/cures/cure_search.hpp"

namespace beamfork {

CureFinder::CureFinder(std::function<void()> finished) : finder_(work, std::move(finished)) {}

bool CureFinder::refresh(Workbench& bench) {
    if (bench.report_revision() != asked_revision_ && !bench.is_coarse()) {
        asked_revision_ = bench.report_revision();
        if (bench.report() != nullptr)
            finder_.ask(Job{asked_revision_, bench.document().setup, *bench.report()});
    }
    auto found = finder_.take();
    if (found) bench.adopt_cures(found->revision, std::move(found->cures));
    return found.has_value();
}

void CureFinder::work(const Job& job, const Finder::Desk& desk) {
    auto cures = find_cures(job.setup, job.report, desk.is_given_up);
    if (!desk.is_given_up()) desk.publish(Found{job.revision, std::move(cures)});
}

}  // namespace beamfork
