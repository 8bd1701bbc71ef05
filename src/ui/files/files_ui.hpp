// What opening, saving, starting and leaving setups is shown, keeps and asks for.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "desk/commands.hpp"
#include "desk/desk_view.hpp"
#include "document/described_setup.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// A setup that the program carries within itself.
struct DemoEntry {
    std::string title;
    std::string story;
    std::string asset;      ///< "assets/demos/short_of_focus.train.toml"
    ImTextureID picture{};  ///< 16 : 9, row 0 at the top; null: none yet
};

/// Work that a window left unsaved when it broke down.
struct LostWorkEntry {
    std::string title;
    std::string file;  ///< empty: never saved
};
/// To the first of FilesView::lost_work.
enum class RecoveryAnswer { restore, discard };

struct FilesView {
    std::vector<DemoEntry> demos;
    std::vector<LostWorkEntry> lost_work;  ///< newest first
};

/// Remembered.
struct FilesSession {
    std::string folder;  ///< where a file was opened or written last
};

struct FilesRequests {
    std::optional<RecoveryAnswer> recovery;
    bool wants_demo_pictures = false;  ///< those that FilesView::demos lacks
};

enum class FilePurpose { open, save };

struct FolderEntry {
    std::string name;
    bool is_folder = false;
};

struct FileDialog {
    FilePurpose purpose = FilePurpose::open;
    std::filesystem::path folder;
    std::string folder_text;  ///< as typed, until Enter
    std::string name;
    bool all_files = false;  ///< else setups only
    std::vector<FolderEntry> entries;
    std::string error;
    bool asks_to_overwrite = false;
    bool opened = false;  ///< the popup is up
};

struct DescribeDialog {
    SetupAnswers answers;                      ///< its kinds; numbers are as typed below
    std::map<std::string, std::string> typed;  ///< by the question's key; empty: not known
    std::string error;
    bool opened = false;  ///< the popup is up
};

struct FilesState {
    std::optional<FileDialog> file_dialog;
    std::optional<DescribeDialog> describe_dialog;
    std::optional<Command> pending;  ///< waits for the answer about unsaved work
    bool saving_for_pending = false;
    std::set<std::uint64_t> agreed_to_lose;  ///< setups whose changes may go with what waits
    bool save_was_requested = false;
    bool recovery_put_off = false;   ///< unsaved work that was found is asked about no more
    std::uint64_t setup_seen = 0;    ///< that the row of setups was scrolled to
    bool start_page_wanted = false;  ///< the start page opens
};

struct FilesUi : Ui {
    const DeskView& desk;
    const FilesView& view;
    FilesSession& session;
    FilesState& state;
    FilesRequests& asks;
};

}  // namespace beamfork
