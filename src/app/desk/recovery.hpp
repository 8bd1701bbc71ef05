// Unsaved work outlives a crash: a copy of it lies in the user's state folder while there is any, and the
// next window offers it. The user's own file is never touched.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/setup_row.hpp"
#include "ui/files/files_ui.hpp"

namespace beamfork {

/// What a window that ended without goodbye has left.
struct LostWork {
    std::filesystem::path copy;  ///< where it lies
    std::string file;            ///< the file it belongs to; empty: never saved
    Document document;
};

/// $XDG_STATE_HOME/beamfork/unsaved, else ~/.local/state/beamfork/unsaved; empty without a home.
std::filesystem::path recovery_folder();

/// Copies whose process runs no more, newest first. Broken ones are left where they are and not told.
std::vector<LostWork> find_lost_work(const std::filesystem::path& folder);

/// What a copy's bytes say; nothing: they are none. `copy` is where they lie.
std::optional<LostWork> read_lost_work(const std::string& bytes, const std::filesystem::path& copy);

class RecoveryDesk {
public:
    /// Without a folder nothing is kept.
    explicit RecoveryDesk(std::filesystem::path folder);
    /// Writes what is not yet kept, unless close() was called: an exception is on its way down.
    ~RecoveryDesk();
    RecoveryDesk(const RecoveryDesk&) = delete;
    RecoveryDesk& operator=(const RecoveryDesk&) = delete;
    RecoveryDesk(RecoveryDesk&&) = delete;
    RecoveryDesk& operator=(RecoveryDesk&&) = delete;

    /// What is offered.
    [[nodiscard]] std::vector<LostWorkEntry> lost_work() const;
    /// Carries out the user's answer. True when another document is shown.
    bool answer(std::optional<RecoveryAnswer> answer, SetupRow& row, SetupPose& pose);
    /// Of each setup keeps a copy `delay_seconds` after the first change that is not in one; removes it when nothing
    /// is unsaved or the setup is closed. `now` in seconds of any steady clock.
    void keep(const SetupRow& row, double now);
    /// Seconds until keep() has something to do; nothing: not until the next change.
    [[nodiscard]] std::optional<double> seconds_left(double now) const;
    /// The window closes as the user wished: nothing is left behind.
    void close();

    static constexpr double delay_seconds = 3;

private:
    // What is kept of one setup.
    struct Keeping {
        std::filesystem::path copy;
        std::shared_ptr<const Document> wanted;  ///< unsaved, as of the last keep(); null: none
        std::shared_ptr<const Document> kept;    ///< what the copy holds
        std::string file;
        std::optional<double> due;
    };
    void want(Keeping& keeping, const Workbench& bench);
    void keep(Keeping& keeping, double now);
    void write(Keeping& keeping) const;
    static void remove_copy(Keeping& keeping);

    std::filesystem::path folder_;
    std::string process_;  ///< names the copies of this process
    std::vector<LostWork> lost_;
    std::map<std::uint64_t, Keeping> keepings_;  ///< by the setup's number
};

}  // namespace beamfork
