// The setups that are open at once, one of them shown: each a workbench with its own history, view and selection.
// Opening never takes the place of work: what is opened stands beside it, unless what is shown is a demo or a new
// setup that nobody has touched.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/setup_pose.hpp"
#include "desk/workbench.hpp"

namespace beamfork {

struct OpenSetup {
    std::uint64_t number = 0;  ///< never used twice
    Workbench bench;
    SetupPose pose;  ///< as it was when it was shown last; of the shown one, the window has it
};

class SetupRow {
public:
    explicit SetupRow(const ReadSetup& first);

    [[nodiscard]] Workbench& shown() { return setups_[position_]->bench; }
    [[nodiscard]] const Workbench& shown() const { return setups_[position_]->bench; }
    [[nodiscard]] std::uint64_t shown_number() const { return setups_[position_]->number; }
    /// Never empty; by number or null.
    [[nodiscard]] const std::vector<std::unique_ptr<OpenSetup>>& setups() const { return setups_; }
    [[nodiscard]] const OpenSetup* find(std::uint64_t number) const;

    /// Carries out what one frame asked for. A setup that leaves the window takes its pose along from the window,
    /// the one that comes brings its own.
    void carry_out(const DeskRequests& requests, SetupPose& pose);
    /// Unsaved work of a window that broke down: over its own file where that is open and unchanged, else beside.
    void restore(const Document& unsaved, const std::filesystem::path& path, SetupPose& pose);
    /// Opens the files of an earlier window, the one to be shown by its path; those that cannot be read are told of
    /// and left out. True when there is at least one; they take the place of an untouched demo.
    bool reopen(const std::vector<std::string>& files, const std::string& shown, SetupPose& pose);

    /// Of the shown setup, with the list of all.
    [[nodiscard]] DeskView view() const;
    [[nodiscard]] bool wants_to_quit() const { return shown().wants_to_quit(); }
    /// The last one was closed since the last call: a demo stands in its place.
    [[nodiscard]] bool take_emptied() { return std::exchange(is_emptied_, false); }
    [[nodiscard]] const std::vector<std::string>& recent_files() const {
        return shown().recent_files;
    }
    void set_recent_files(const std::vector<std::string>& files);
    /// Absolute paths of those that have a file, in order; of the shown one, empty without a file.
    [[nodiscard]] std::vector<std::string> open_files() const;
    [[nodiscard]] std::string shown_file() const;

private:
    std::unique_ptr<OpenSetup> made(const ReadSetup& from);
    void carry_out(const Command& command, SetupPose& pose);
    void open(const Command& command, SetupPose& pose);
    void stand_beside(std::unique_ptr<OpenSetup> fresh, SetupPose& pose);
    void show(std::size_t position, SetupPose& pose);
    void close(std::size_t position, SetupPose& pose);
    [[nodiscard]] std::optional<std::size_t> place_of(std::uint64_t number) const;
    [[nodiscard]] std::optional<std::size_t> place_of(const std::filesystem::path& path) const;

    std::vector<std::unique_ptr<OpenSetup>> setups_;
    std::size_t position_ = 0;
    std::uint64_t last_number_ = 0;
    bool is_emptied_ = false;
};

}  // namespace beamfork
