#include "app/desk/session_store.hpp"

#include <algorithm>

#include "base/user_folders.hpp"
#include "document/atomic_file.hpp"

#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

// One list for reading and writing. Every member of each struct is named once: a new one does not compile until it is
// named too, and then kept, or passed by with those that begin anew.
template <class Options, class Keep>
void keep_options(Options& view, const Keep& keep) {
    auto& [shells, section_x_mm, labels, dimensions, light, clipped_rays, light_gain, light_ground,
           night, night_brightness, paint_pupil, light_moves, light_is_held, light_speed_mm_s,
           light_front_mm, apart] = view;
    keep("labels", labels);
    keep("dimensions", dimensions);
    keep("light_ground", light_ground);
    keep("night", night);
    keep("night_brightness", night_brightness, 0.2F, 1.0F);
    keep("light_gain", light_gain, 0.2F, 5.0F);
}

template <class Arrangement, class Keep>
void keep_layout(Arrangement& layout, const Keep& keep) {
    auto& [text_scale, column_width, findings_width, strip_height, train_share, budget_share,
           light_share, study, study_is_wide, parts_at_left, narrow_shows, narrow_findings,
           folded] = layout;
    keep("text_scale", text_scale, 0.75F, 3.0F);
    keep("column_width", column_width, 4.0F, 200.0F);
    keep("findings_width", findings_width);
    keep("strip_height", strip_height, 2.0F, 200.0F);
    keep("train_share", train_share, 0.05F, 0.95F);
    keep("budget_share", budget_share, 0.05F, 0.95F);
    keep("light_share", light_share, 0.05F, 0.95F);
    keep("study", study);
    keep("study_is_wide", study_is_wide);
    keep("parts_at_left", parts_at_left);
    keep("narrow_shows", narrow_shows);
    keep("narrow_findings", narrow_findings);
    keep("folded", folded);
}

template <class Remembered, class Keep>
void keep_session(Remembered& session, const Keep& keep) {
    auto& [pose, view, layout, welcome_dismissed, files, findings, comparison, tune] = session;
    keep_options(view, keep);
    keep_layout(layout, keep);
    keep("welcome_dismissed", welcome_dismissed);
    auto& [folder] = files;
    keep("folder", folder);
    auto& [shows_all] = findings;
    keep("all_findings", shows_all);
    auto& [with, place] = comparison;
    keep("compare_with", with);
    auto& [varied, watched, wanted, whole_range] = tune;
    keep("tune_varied", varied);
    keep("tune_watched", watched);
    keep("tune_wanted", wanted);
    keep("tune_whole_range", whole_range);
}

// What the file does not hold stays as it is.
struct Reader {
    const nlohmann::json& from;
    template <class Value>
    void operator()(const char* key, Value& value) const {
        value = from.value(key, value);
    }
    void operator()(const char* key, float& value, float low, float high) const {
        const auto found = from.find(key);
        if (found != from.end() && found->is_number())
            value = std::clamp(found->get<float>(), low, high);
    }
};

struct Writer {
    nlohmann::json& into;
    template <class Value>
    void operator()(const char* key, const Value& value) const {
        into[key] = value;
    }
    void operator()(const char* key, float value, float /*low*/, float /*high*/) const {
        into[key] = value;
    }
};

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
    constexpr std::size_t largest = 1U << 20U;
    return read_session(read_file(path, largest).value_or(""));
}

StoredSession read_session(const std::string& text) {
    const nlohmann::json root = nlohmann::json::parse(text, nullptr, false);
    if (!root.is_object()) return {};
    try {
        Session session;
        keep_session(session, Reader{root});
        return {session, root.value("recent_files", std::vector<std::string>{}),
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
    Session session = stored.session;
    session.comparison.with = lasting(session.comparison.with);
    nlohmann::json root{{"recent_files", stored.recent_files},
                        {"open_files", stored.open_files},
                        {"shown_file", stored.shown_file}};
    keep_session(session, Writer{root});
    return replace_file(path, root.dump(2) + "\n");
}

}  // namespace beamfork
