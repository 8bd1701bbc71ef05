#include "app/desk/recovery.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <utility>

#include "base/user_folders.hpp"
#include "document/atomic_file.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <unistd.h>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view copy_ending = ".unsaved.json";

// When a process began, in clock ticks since the machine did: proc(5), /proc/PID/stat, field 22. With its
// number it names a process for good; empty when there is none.
std::string start_of_process(const std::string& number) {
    std::ifstream file("/proc/" + number + "/stat");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const std::size_t name_end = text.rfind(')');  // the name before it may hold blanks
    if (name_end == std::string::npos) return {};
    constexpr int fields_between = 20;
    std::size_t at = name_end + 1;
    std::string word;
    for (int i = 0; i < fields_between; ++i) {
        const std::size_t begin = text.find_first_not_of(' ', at);
        if (begin == std::string::npos) return {};
        at = std::min(text.find(' ', begin), text.size());
        word = text.substr(begin, at - begin);
    }
    return word;
}

// "1234-567890-2": the number and the start of its process, and which of its setups.
bool still_runs(const std::string& stem) {
    const std::size_t dash = stem.find('-');
    if (dash == std::string::npos) return false;
    const std::string start = start_of_process(stem.substr(0, dash));
    const std::size_t end = std::min(stem.find('-', dash + 1), stem.size());
    return !start.empty() && start == stem.substr(dash + 1, end - dash - 1);
}

std::optional<LostWork> read_copy(const fs::path& path) {
    const auto bytes = read_file(path, 4 * largest_file);
    return bytes ? read_lost_work(*bytes, path) : std::nullopt;
}

}  // namespace

std::optional<LostWork> read_lost_work(const std::string& bytes, const fs::path& copy) {
    const nlohmann::json root = nlohmann::json::parse(bytes, nullptr, false);
    if (!root.is_object()) return std::nullopt;
    const auto text = root.find("setup");
    if (text == root.end() || !text->is_string()) return std::nullopt;
    const auto read = read_setup(text->get<std::string>(), copy.string());
    if (!read) return std::nullopt;
    const auto file = root.find("file");
    const bool has_file = file != root.end() && file->is_string();
    return LostWork{copy, has_file ? file->get<std::string>() : "", read->document};
}

fs::path recovery_folder() {
    const fs::path folder = state_folder();
    return folder.empty() ? folder : folder / "unsaved";
}

std::vector<LostWork> find_lost_work(const fs::path& folder) {
    std::vector<std::pair<fs::file_time_type, LostWork>> found;
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble); at != fs::directory_iterator();
         at.increment(trouble)) {
        const std::string name = at->path().filename().string();
        if (!name.ends_with(copy_ending)) continue;
        if (still_runs(name.substr(0, name.size() - copy_ending.size()))) continue;
        std::error_code unknown;
        const auto when = at->last_write_time(unknown);
        if (auto work = read_copy(at->path())) found.emplace_back(when, *std::move(work));
        if (trouble) break;
    }
    std::sort(found.begin(), found.end(),
              [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<LostWork> lost;
    for (auto& one : found)
        lost.push_back(std::move(one.second));
    return lost;
}

RecoveryDesk::RecoveryDesk(fs::path folder) : folder_(std::move(folder)) {
    if (folder_.empty()) return;
    const std::string number = std::to_string(getpid());
    process_ = number + "-" + start_of_process(number);
    lost_ = find_lost_work(folder_);
}

RecoveryDesk::~RecoveryDesk() {
    for (auto& [number, keeping] : keepings_) {
        if (keeping.wanted != nullptr && keeping.wanted != keeping.kept) write(keeping);
    }
}

std::vector<LostWorkEntry> RecoveryDesk::lost_work() const {
    std::vector<LostWorkEntry> entries;
    for (const LostWork& work : lost_)
        entries.push_back({work.document.setup.title, work.file});
    return entries;
}

bool RecoveryDesk::answer(std::optional<RecoveryAnswer> answer, SetupRow& row, SetupPose& pose) {
    if (!answer || lost_.empty()) return false;
    const LostWork work = std::move(lost_.front());
    lost_.erase(lost_.begin());
    if (answer == RecoveryAnswer::restore) {
        row.restore(work.document, work.file, pose);
        keep(row, 0);
        Keeping& keeping = keepings_[row.shown_number()];
        write(keeping);                                   // before the old copy goes
        if (keeping.kept != keeping.wanted) return true;  // the disk is full: the old copy stays
    }
    std::error_code trouble;
    fs::remove(work.copy, trouble);
    return answer == RecoveryAnswer::restore;
}

void RecoveryDesk::keep(const SetupRow& row, double now) {
    if (folder_.empty()) return;
    for (const auto& setup : row.setups()) {
        Keeping& keeping = keepings_[setup->number];
        if (keeping.copy.empty())
            keeping.copy = folder_ / fmt::format("{}-{}{}", process_, setup->number, copy_ending);
        want(keeping, setup->bench);
        keep(keeping, now);
    }
    for (auto at = keepings_.begin(); at != keepings_.end();) {
        if (row.find(at->first) == nullptr) {
            remove_copy(at->second);
            at = keepings_.erase(at);
        } else {
            ++at;
        }
    }
}

void RecoveryDesk::want(Keeping& keeping, const Workbench& bench) {
    keeping.wanted = bench.is_modified() ? bench.shared_document() : nullptr;
    keeping.file = bench.path().empty() ? "" : fs::absolute(bench.path()).string();
}

void RecoveryDesk::keep(Keeping& keeping, double now) {
    if (keeping.wanted == nullptr) {
        keeping.due.reset();
        if (keeping.kept != nullptr) remove_copy(keeping);
    } else if (keeping.wanted == keeping.kept) {
        keeping.due.reset();
    } else if (!keeping.due) {
        keeping.due = now + delay_seconds;
    } else if (now >= *keeping.due) {
        write(keeping);
        keeping.due.reset();
        if (keeping.kept != keeping.wanted)
            keeping.due = now + 10 * delay_seconds;  // try again later
    }
}

std::optional<double> RecoveryDesk::seconds_left(double now) const {
    std::optional<double> soonest;
    for (const auto& [number, keeping] : keepings_) {
        if (!keeping.due) continue;
        const double left = std::max(0.01, *keeping.due - now);
        soonest = std::min(soonest.value_or(left), left);
    }
    return soonest;
}

void RecoveryDesk::close() {
    for (auto& [number, keeping] : keepings_)
        remove_copy(keeping);
    keepings_.clear();
}

void RecoveryDesk::write(Keeping& keeping) const {
    if (keeping.wanted == nullptr || folder_.empty()) return;
    std::error_code trouble;
    fs::create_directories(folder_, trouble);
    const nlohmann::json root{{"file", keeping.file}, {"setup", write_setup(*keeping.wanted)}};
    if (replace_file(keeping.copy, root.dump(2) + "\n")) keeping.kept = keeping.wanted;
}

void RecoveryDesk::remove_copy(Keeping& keeping) {
    std::error_code trouble;
    if (!keeping.copy.empty()) fs::remove(keeping.copy, trouble);
    keeping.kept.reset();
}

}  // namespace beamfork
