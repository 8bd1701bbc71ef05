#include "app/recovery.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <utility>

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

// "1234-567890": the number and the start of its process.
bool still_runs(const std::string& stem) {
    const std::size_t dash = stem.find('-');
    if (dash == std::string::npos) return false;
    const std::string start = start_of_process(stem.substr(0, dash));
    return !start.empty() && start == stem.substr(dash + 1);
}

std::optional<LostWork> read_copy(const fs::path& path) {
    const auto bytes = read_file(path, 4 * largest_file);
    if (!bytes) return std::nullopt;
    const nlohmann::json root = nlohmann::json::parse(*bytes, nullptr, false);
    if (!root.is_object()) return std::nullopt;
    const auto text = root.find("setup");
    if (text == root.end() || !text->is_string()) return std::nullopt;
    const auto read = read_setup(text->get<std::string>(), path.string());
    if (!read) return std::nullopt;
    const auto file = root.find("file");
    const bool has_file = file != root.end() && file->is_string();
    return LostWork{path, has_file ? file->get<std::string>() : "", read->document};
}

}  // namespace

fs::path recovery_folder() {
    if (const char* state = std::getenv("XDG_STATE_HOME"); state && *state)
        return fs::path(state) / "beamfork" / "unsaved";
    if (const char* home = std::getenv("HOME"); home && *home)
        return fs::path(home) / ".local" / "state" / "beamfork" / "unsaved";
    return {};
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
    copy_ = folder_ / fmt::format("{}-{}{}", number, start_of_process(number), copy_ending);
    lost_ = find_lost_work(folder_);
}

RecoveryDesk::~RecoveryDesk() {
    if (wanted_ != nullptr && wanted_ != kept_) write();
}

void RecoveryDesk::fill(View& view) const {
    view.lost_work.clear();
    for (const LostWork& work : lost_)
        view.lost_work.push_back({work.document.setup.title, work.file});
}

bool RecoveryDesk::answer(const Requests& requests, Workbench& bench) {
    if (!requests.recovery || lost_.empty()) return false;
    const LostWork work = std::move(lost_.front());
    lost_.erase(lost_.begin());
    if (requests.recovery == RecoveryAnswer::restore) {
        bench.restore(work.document, work.file);
        keep(bench, 0);
        write();                            // before the old copy goes
        if (kept_ != wanted_) return true;  // the disk is full: the old copy stays
    }
    std::error_code trouble;
    fs::remove(work.copy, trouble);
    return requests.recovery == RecoveryAnswer::restore;
}

void RecoveryDesk::keep(const Workbench& bench, double now) {
    if (folder_.empty()) return;
    wanted_ = bench.is_modified() ? bench.shared_document() : nullptr;
    file_ = bench.path().empty() ? "" : fs::absolute(bench.path()).string();
    if (wanted_ == nullptr) {
        due_.reset();
        if (kept_ != nullptr) remove_copy();
        return;
    }
    if (wanted_ == kept_) {
        due_.reset();
    } else if (!due_) {
        due_ = now + delay_seconds;
    } else if (now >= *due_) {
        write();
        due_.reset();
        if (kept_ != wanted_) due_ = now + 10 * delay_seconds;  // try again later
    }
}

std::optional<double> RecoveryDesk::seconds_left(double now) const {
    if (!due_) return std::nullopt;
    return std::max(0.01, *due_ - now);
}

void RecoveryDesk::close() {
    wanted_.reset();
    due_.reset();
    remove_copy();
}

void RecoveryDesk::write() {
    if (wanted_ == nullptr || folder_.empty()) return;
    std::error_code trouble;
    fs::create_directories(folder_, trouble);
    const nlohmann::json root{{"file", file_}, {"setup", write_setup(*wanted_)}};
    if (replace_file(copy_, root.dump(2) + "\n")) kept_ = wanted_;
}

void RecoveryDesk::remove_copy() {
    std::error_code trouble;
    if (!copy_.empty()) fs::remove(copy_, trouble);
    kept_.reset();
}

}  // namespace beamfork
