#include "document/tour_reader.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "document/tour_lit.hpp"
#include "document/unknown_key.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

tl::unexpected<Error> refuse_at(const Reading& reading, const toml::node& node, std::string what) {
    return fail(ErrorCode::bad_input, std::move(what), reading.at(line_of(node)));
}

Result<StandardView> read_view(const Reading& reading, const toml::node& node) {
    const auto word = read_words(reading, node, "view");
    if (!word) return tl::make_unexpected(word.error());
    if (const auto view = standard_view_named(*word)) return *view;
    std::vector<std::string> known;
    for (const StandardView view : all_standard_views)
        known.emplace_back(name_of(view));
    return refuse_at(reading, node,
                     fmt::format("no view is called '{}'; expected one of: {}{}", *word,
                                 fmt::join(known, ", "), did_you_mean(*word, known)));
}

// show = ["motion", "pupil"]
Result<std::set<TourShow>> read_show(const Reading& reading, const toml::node& node) {
    const auto* list = node.as_array();
    std::vector<std::string> known;
    for (const TourShow show : all_tour_shows)
        known.emplace_back(name_of(show));
    const auto expected = [&](const toml::node& at, const std::string& found) {
        return refuse_at(reading, at,
                         fmt::format("show must be a list of words out of {}, not {}{}",
                                     fmt::join(known, ", "), found, did_you_mean(found, known)));
    };
    if (list == nullptr) return expected(node, what_it_is(node));
    std::set<TourShow> shown;
    for (const toml::node& item : *list) {
        const auto word = item.value<std::string>();
        if (!word) return expected(item, what_it_is(item));
        const auto found = std::find(known.begin(), known.end(), *word);
        if (found == known.end()) return expected(item, *word);
        shown.insert(all_tour_shows.at(static_cast<std::size_t>(found - known.begin())));
    }
    return shown;
}

constexpr const char* camera_example =
    "camera must be like { target_mm = [0, 20, 700], distance_mm = 400, yaw_deg = 40, pitch_deg = "
    "10 }";

Result<TourCamera> read_camera(Reading& reading, const toml::node& node, Extras& extras) {
    const auto* table = node.as_table();
    if (table == nullptr)
        return refuse_at(reading, node,
                         fmt::format("{}, not {}", camera_example, what_it_is(node)));
    TourCamera camera;
    for (const auto& [key, value] : in_file_order(*table)) {
        const std::string_view name = key->str();
        const auto* list = value->as_array();
        const auto number = value->value<double>();
        const bool is_number = value->is_number() && number;
        if (name == "target_mm") {
            const bool has_three = list != nullptr && list->size() == 3
                                   && std::all_of(list->begin(), list->end(),
                                                  [](const auto& one) { return one.is_number(); });
            if (!has_three) return refuse_at(reading, *value, camera_example);
            for (std::size_t i = 0; i < 3; ++i)
                camera.target_mm.at(i) = (*list)[i].value<double>().value_or(0);
        } else if (name == "distance_mm" || name == "yaw_deg" || name == "pitch_deg") {
            if (!is_number) {
                return refuse_at(reading, *value,
                                 fmt::format("{} of a camera must be a number, not {}", name,
                                             what_it_is(*value)));
            }
            (name == "distance_mm" ? camera.distance_mm
             : name == "yaw_deg"   ? camera.yaw_deg
                                   : camera.pitch_deg) = *number;
        } else {
            const std::vector<std::string> known{"target_mm", "distance_mm", "yaw_deg",
                                                 "pitch_deg"};
            std::map<std::string, std::string> lost;
            if (auto kept = keep_unrecognised(reading, *key, *value, lost,
                                              unknown_key_sentence(name, "in a camera", known));
                !kept)
                return tl::make_unexpected(kept.error());
            for (auto& [unknown, text] : lost)
                extras.unrecognised.insert_or_assign(std::string(camera_prefix) + unknown,
                                                     std::move(text));
        }
    }
    return camera;
}

Result<void>
read_text(const Reading& reading, const toml::node& node, const char* what, std::string& into) {
    auto text = read_words(reading, node, what);
    if (!text) return tl::make_unexpected(text.error());
    std::erase(*text, '\r');
    into = std::move(*text);
    return {};
}

Result<void> read_lit(Reading& reading, const toml::node& node, std::vector<std::string>& lit) {
    const auto* list = node.as_array();
    if (list == nullptr)
        return refuse_at(reading, node,
                         fmt::format("lit must be a list such as lit = [\"splitter_head\", \"part: "
                                     "Spacer\"], not {}",
                                     what_it_is(node)));
    for (const toml::node& item : *list) {
        auto word = read_words(reading, item, "what is lit");
        if (!word) return tl::make_unexpected(word.error());
        lit.push_back(std::move(*word));
        if (const auto wrong = lit_objection(lit)) return refuse_at(reading, item, *wrong);
        reading.lit_words.emplace_back(line_of(item), lit.back());
    }
    return {};
}

// What a step asks, until all of its keys are read.
struct AskedKeys {
    TourQuestion asks;
    const toml::node* question = nullptr;
    const toml::node* answers = nullptr;
    const toml::node* right = nullptr;
};

Result<void> read_answers(Reading& reading, const toml::node& node, TourQuestion& asks) {
    const auto* list = node.as_array();
    if (list == nullptr || list->size() < 2 || list->size() > most_answers) {
        return refuse_at(reading, node,
                         fmt::format("answers must be a list of two or three texts, such as "
                                     "answers = [\"Yes\", \"No\"], not {}",
                                     list == nullptr ? what_it_is(node)
                                                     : fmt::format("one of {}", list->size())));
    }
    for (const toml::node& item : *list) {
        if (auto done = read_text(reading, item, "an answer", asks.answers.emplace_back()); !done)
            return done;
    }
    return {};
}

Result<void> read_right(Reading& reading, const toml::node& node, TourQuestion& asks) {
    if (node.is_string()) return read_text(reading, node, "right", asks.right_value);
    const auto number = node.value_exact<std::int64_t>();
    if (!number || *number < 1 || *number > static_cast<std::int64_t>(most_answers)) {
        return refuse_at(reading, node,
                         fmt::format("right must be the number of the right answer, from 1, or a "
                                     "value such as \"{{focus.verdict}}\", not {}",
                                     number ? std::to_string(*number) : what_it_is(node)));
    }
    asks.right = static_cast<std::size_t>(*number - 1);
    return {};
}

// Whether `name` is one of the keys of a question; it is read then.
Result<bool>
read_asked_key(Reading& reading, std::string_view name, const toml::node& node, AskedKeys& keys) {
    Result<void> done;
    if (name == "question") {
        keys.question = &node;
        done = read_text(reading, node, "question", keys.asks.question);
    } else if (name == "answers") {
        keys.answers = &node;
        done = read_answers(reading, node, keys.asks);
    } else if (name == "right") {
        keys.right = &node;
        done = read_right(reading, node, keys.asks);
    } else {
        return false;
    }
    if (!done) return tl::make_unexpected(done.error());
    return true;
}

Result<void> finish_question(const Reading& reading, AskedKeys& keys, TourStep& step) {
    const toml::node* any = keys.question != nullptr  ? keys.question
                            : keys.answers != nullptr ? keys.answers
                                                      : keys.right;
    if (any == nullptr) return {};
    const char* missing = keys.question == nullptr  ? "question = \"Will it reach focus?\""
                          : keys.answers == nullptr ? "answers = [\"Yes\", \"No\"]"
                          : keys.right == nullptr   ? "right = 1"
                                                    : nullptr;
    if (missing != nullptr) {
        return refuse_at(reading, *any,
                         fmt::format("a step that asks the room has question, answers and right; "
                                     "add a line such as {}",
                                     missing));
    }
    if (const auto fault = question_fault(keys.asks)) {
        using At = QuestionFault::At;
        return refuse_at(reading,
                         fault->at == At::question  ? *keys.question
                         : fault->at == At::answers ? *keys.answers
                                                    : *keys.right,
                         fault->sentence);
    }
    step.asks = std::move(keys.asks);
    return {};
}

Result<TourStep> read_step(Reading& reading, const toml::table& table) {
    TourStep step;
    AskedKeys asked;
    keep_remark(step.extras.remarks, "", reading.comments.take(line_of(table), line_of(table)));
    for (const auto& [key, value] : in_file_order(table)) {
        const std::string_view name = key->str();
        keep_remark(step.extras.remarks, name, take_remark(reading, *key, *value));
        Result<void> done;
        if (name == "view") {
            const auto view = read_view(reading, *value);
            if (!view) return tl::make_unexpected(view.error());
            step.view = *view;
        } else if (name == "camera") {
            auto camera = read_camera(reading, *value, step.extras);
            if (!camera) return tl::make_unexpected(camera.error());
            step.camera = *camera;
        } else if (name == "caption") {
            done = read_text(reading, *value, "caption", step.caption);
        } else if (name == "notes") {
            done = read_text(reading, *value, "notes", step.notes);
        } else if (name == "show") {
            auto show = read_show(reading, *value);
            if (!show) return tl::make_unexpected(show.error());
            step.show = *std::move(show);
        } else if (name == "lit") {
            done = read_lit(reading, *value, step.lit);
        } else if (const auto is_asked = read_asked_key(reading, name, *value, asked);
                   !is_asked || *is_asked) {
            if (!is_asked) done = tl::make_unexpected(is_asked.error());
        } else {
            const std::vector<std::string> known{"view", "camera",   "show",    "caption", "notes",
                                                 "lit",  "question", "answers", "right"};
            done = keep_unrecognised(reading, *key, *value, step.extras.unrecognised,
                                     unknown_key_sentence(name, "in a step of a tour", known));
        }
        if (!done) return tl::make_unexpected(done.error());
        const Tour alone{"tour", "", {step}};
        if (const auto wrong = tours_objection({&alone, 1}))
            return refuse_at(reading, *value, *wrong);
    }
    if (auto done = finish_question(reading, asked, step); !done)
        return tl::make_unexpected(done.error());
    return step;
}

Result<void> read_steps(Reading& reading, const toml::node& node, Tour& tour) {
    const auto* list = node.as_array();
    if (list == nullptr)
        return refuse_at(reading, node,
                         "expected [[tour.step]] with two brackets and its keys below it");
    for (const toml::node& item : *list) {
        const auto* table = item.as_table();
        if (table == nullptr)
            return refuse_at(reading, item, "expected [[tour.step]] with its keys below it");
        if (tour.steps.size() == most_tour_steps)
            return refuse_at(reading, item,
                             fmt::format("a tour can have at most {} steps", most_tour_steps));
        auto step = read_step(reading, *table);
        if (!step) return tl::make_unexpected(step.error());
        tour.steps.push_back(std::move(*step));
    }
    return {};
}

Result<Tour> read_tour(Reading& reading, const toml::table& table) {
    Tour tour;
    keep_remark(tour.extras.remarks, "", reading.comments.take(line_of(table), line_of(table)));
    for (const auto& [key, value] : in_file_order(table)) {
        const std::string_view name = key->str();
        Result<void> done;
        if (name == "step") {
            done = read_steps(reading, *value, tour);
            if (!done) return tl::make_unexpected(done.error());
            continue;
        }
        keep_remark(tour.extras.remarks, name, take_remark(reading, *key, *value));
        if (name == "name") {
            done = read_text(reading, *value, "name", tour.name);
            if (const auto wrong = tour_name_objection(tour.name); done && wrong)
                return refuse_at(reading, *value, *wrong);
        } else if (name == "title") {
            done = read_text(reading, *value, "title", tour.title);
        } else {
            const std::vector<std::string> known{"name", "title", "step"};
            done = keep_unrecognised(reading, *key, *value, tour.extras.unrecognised,
                                     unknown_key_sentence(name, "in a tour", known));
        }
        if (!done) return tl::make_unexpected(done.error());
    }
    if (tour.title.empty()) tour.title = tour.name;
    return tour;
}

}  // namespace

Result<std::vector<Tour>> read_tours(Reading& reading, const toml::node& node) {
    const auto* list = node.as_array();
    if (list == nullptr)
        return refuse_at(reading, node,
                         "expected [[tour]] with two brackets and its keys below it");
    std::vector<Tour> tours;
    for (const toml::node& item : *list) {
        const auto* table = item.as_table();
        if (table == nullptr)
            return refuse_at(reading, item, "expected [[tour]] with its keys below it");
        auto tour = read_tour(reading, *table);
        if (!tour) return tl::make_unexpected(tour.error());
        tours.push_back(std::move(*tour));
        if (const auto wrong = tours_objection(tours)) return refuse_at(reading, item, *wrong);
    }
    return tours;
}

}  // namespace beamfork
