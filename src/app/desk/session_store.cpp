#include "app/desk/session_store.hpp"

#include <algorithm>
#include <fstream>

#include "base/user_folders.hpp"
#include "document/atomic_file.hpp"

#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

float bounded(const nlohmann::json& from, const char* key, float otherwise, float low, float high) {
    const auto found = from.find(key);
    if (found == from.end() || !found->is_number()) return otherwise;
    return std::clamp(found->get<float>(), low, high);
}

Session session_from(const nlohmann::json& from) {
    Session session;
    session.text_scale = bounded(from, "text_scale", session.text_scale, 0.75F, 3);
    session.column_width = bounded(from, "column_width", session.column_width, 4, 200);
    session.strip_height = bounded(from, "strip_height", session.strip_height, 2, 200);
    session.train_share = bounded(from, "train_share", session.train_share, 0.05F, 0.95F);
    session.budget_share = bounded(from, "budget_share", session.budget_share, 0.05F, 0.95F);
    session.light_share = bounded(from, "light_share", session.light_share, 0.05F, 0.95F);
    session.view.light_gain = bounded(from, "light_gain", session.view.light_gain, 0.2F, 5);
    session.view.night_brightness =
        bounded(from, "night_brightness", session.view.night_brightness, 0.2F, 1);
    session.view.night = from.value("night", session.view.night);
    session.view.labels = from.value("labels", session.view.labels);
    session.view.dimensions = from.value("dimensions", session.view.dimensions);
    session.view.light_ground = from.value("light_ground", session.view.light_ground);
    session.findings_width = from.value("findings_width", session.findings_width);
    session.all_findings = from.value("all_findings", session.all_findings);
    session.welcome_dismissed = from.value("welcome_dismissed", session.welcome_dismissed);
    session.folder = from.value("folder", session.folder);
    session.study = from.value("study", session.study);
    session.study_is_wide = from.value("study_is_wide", session.study_is_wide);
    session.parts_at_left = from.value("parts_at_left", session.parts_at_left);
    session.narrow_shows = from.value("narrow_shows", session.narrow_shows);
    session.narrow_findings = from.value("narrow_findings", session.narrow_findings);
    session.folded = from.value("folded", session.folded);
    session.tune_varied = from.value("tune_varied", session.tune_varied);
    session.tune_watched = from.value("tune_watched", session.tune_watched);
    session.tune_wanted = from.value("tune_wanted", session.tune_wanted);
    session.compare_with = from.value("compare_with", session.compare_with);
    session.tune_whole_range = from.value("tune_whole_range", session.tune_whole_range);
    return session;
}

// An open setup's number means nothing in another run.
std::string lasting(const std::string& compared_with) {
    return compared_with.starts_with("open:") ? "" : compared_with;
}

}  // namespace

std::filesystem::path session_path() {
    const std::filesystem::path folder = config_folder();
    return folder.empty() ? folder : folder / "session.json";
}

StoredSession load_session(const std::filesystem::path& path) {
    std::ifstream file(path);
    const nlohmann::json root = nlohmann::json::parse(file, nullptr, false);
    if (!root.is_object()) return {};
    try {
        return {session_from(root), root.value("recent_files", std::vector<std::string>{}),
                root.value("open_files", std::vector<std::string>{}),
                root.value("shown_file", std::string{})};
    } catch (const nlohmann::json::
                 exception&) {  // a value of another type: somebody has edited the file
        return {};
    }
}

Result<void> store_session(const std::filesystem::path& path, const StoredSession& stored) {
    if (path.empty()) return {};
    std::error_code failed;
    std::filesystem::create_directories(path.parent_path(), failed);
    const Session& session = stored.session;
    const nlohmann::json root{{"text_scale", session.text_scale},
                              {"column_width", session.column_width},
                              {"strip_height", session.strip_height},
                              {"train_share", session.train_share},
                              {"budget_share", session.budget_share},
                              {"light_share", session.light_share},
                              {"light_gain", session.view.light_gain},
                              {"labels", session.view.labels},
                              {"dimensions", session.view.dimensions},
                              {"night", session.view.night},
                              {"night_brightness", session.view.night_brightness},
                              {"light_ground", session.view.light_ground},
                              {"findings_width", session.findings_width},
                              {"all_findings", session.all_findings},
                              {"welcome_dismissed", session.welcome_dismissed},
                              {"folder", session.folder},
                              {"study", session.study},
                              {"study_is_wide", session.study_is_wide},
                              {"parts_at_left", session.parts_at_left},
                              {"narrow_shows", session.narrow_shows},
                              {"narrow_findings", session.narrow_findings},
                              {"folded", session.folded},
                              {"tune_varied", session.tune_varied},
                              {"tune_watched", session.tune_watched},
                              {"tune_wanted", session.tune_wanted},
                              {"tune_whole_range", session.tune_whole_range},
                              {"compare_with", lasting(session.compare_with)},
                              {"recent_files", stored.recent_files},
                              {"open_files", stored.open_files},
                              {"shown_file", stored.shown_file}};
    return replace_file(path, root.dump(2) + "\n");
}

}  // namespace beamfork
