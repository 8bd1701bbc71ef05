// Finds the setup that the open one is compared with, studies it once, and puts it into the picture.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "desk/setup_row.hpp"
#include "ui/comparison/comparison_view.hpp"

namespace beamfork {

class ComparisonDesk {
public:
    /// What can be chosen, and what was found; of the open setups, those that are not shown can be chosen.
    [[nodiscard]] ComparisonView view(const DeskView& desk) const;
    /// After a frame: finds and studies what is asked for where that has changed, and tells the bench what its picture shows
    /// beside the train. True when there is something new to show. `others` are the setups that are open beside it.
    bool
    refresh(Workbench& bench, const ComparisonRequests& requests, const SetupRow* others = nullptr);

private:
    [[nodiscard]] Result<std::shared_ptr<const Document>>
    document_of(const std::string& key, const Workbench& bench, const SetupRow* others) const;

    void study(const std::string& key,
               const Result<std::shared_ptr<const Document>>& document,
               const Workbench& bench);

    std::shared_ptr<const Document> kept_;
    std::string asked_;                     ///< key
    std::shared_ptr<const Document> from_;  ///< what the other setup was made from
    std::shared_ptr<const ComparedSetup> other_;
    std::string problem_;
};

}  // namespace beamfork
