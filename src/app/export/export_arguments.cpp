#include "app/export/export_arguments.hpp"

#include "app/commands/option_words.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

using Words = std::vector<std::string>;

void add_size(Words& words, const ExportOrder& order) {
    words.insert(words.end(), {"--size", fmt::format("{}x{}", order.width, order.height),
                               "--ground", order.white_ground ? "white" : "dark"});
}

Words picture_words(const ExportOrder& order) {
    Words words{"--camera=" + camera_words(order.camera)};
    add_size(words, order);
    if (order.transparent) words.emplace_back("--transparent");
    if (!order.names) words.emplace_back("--no-names");
    if (order.painted) words.emplace_back("--paint-objective");
    if (order.light_moves)
        words.push_back("--light-in-motion=" + format_exact(order.light_front_mm));
    if (order.apart > 0) words.push_back("--pull-apart=" + format_exact(order.apart));
    return words;
}

Words film_words(const ExportOrder& order) {
    Words words{"--seconds", format_exact(order.seconds), "--about",
                order.whole_train ? "train" : "head"};
    add_size(words, order);
    if (order.names) words.emplace_back("--names");
    if (order.painted) words.emplace_back("--paint-objective");
    if (order.light_moves) words.emplace_back("--light-in-motion");
    if (order.apart > 0) words.emplace_back("--pull-apart");
    return words;
}

Words model_words(const ExportOrder& order) {
    Words words;
    if (!order.light) words.emplace_back("--no-light");
    if (order.whole_shells) words.emplace_back("--whole-shells");
    return words;
}

}  // namespace

Words export_arguments(const ExportOrder& order, const std::string& setup_file) {
    Words words;
    const auto add = [&](const char* command, const Words& more) {
        words = {command, setup_file, "--allow-unknown"};
        words.insert(words.end(), more.begin(), more.end());
    };
    switch (order.kind) {
    case ExportKind::sheet: add("sheet", order.night ? Words{"--night"} : Words{}); break;
    case ExportKind::picture: add("picture", picture_words(order)); break;
    case ExportKind::model: add("model", model_words(order)); break;
    case ExportKind::film: add("film", film_words(order)); break;
    }
    const bool is_folder = order.kind == ExportKind::film && order.single_pictures;
    words.insert(words.end(), {is_folder ? "--frames" : "--output", order.output.string()});
    return words;
}

}  // namespace beamfork
