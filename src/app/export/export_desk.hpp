// The window's exports: takes what the dialog asks for, runs it, and tells the window how far it is.
#pragma once

#include "app/export/export_runner.hpp"
#include "desk/workbench.hpp"
#include "ui/export/export_order.hpp"

namespace beamfork {

class ExportDesk {
public:
    /// `wake` is called from another thread when there is news.
    ExportDesk(std::filesystem::path program, std::function<void()> wake)
        : runner_(std::move(program), std::move(wake)) {}

    /// After a frame: starts or gives up what was asked for, and tells the bench what became of it. True when there
    /// is something new to show.
    bool refresh(Workbench& bench, const ExportRequests& requests);
    [[nodiscard]] ExportState state() const;

private:
    Result<void> start(const Workbench& bench, const ExportOrder& order);

    ExportRunner runner_;
    bool is_given_up_ = false;
    std::string shown_;
};

}  // namespace beamfork
