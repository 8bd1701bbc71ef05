#include "app/commands/option_words.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "base/text.hpp"
#include "base/units.hpp"
#include "ui/panels.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

std::string one_of(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

std::size_t place_of(const std::vector<std::string>& names, const std::string& word) {
    return static_cast<std::size_t>(std::find(names.begin(), names.end(), word) - names.begin());
}

Result<void> check_word(const std::string& option,
                        const std::string& word,
                        const std::vector<std::string>& names) {
    if (place_of(names, word) < names.size()) return {};
    return fail(ErrorCode::bad_input, fmt::format("{} must be one of {}, not '{}'{}", option,
                                                  one_of(names), word, did_you_mean(word, names)));
}

Result<void> check_ending(const std::string& output,
                          const std::string& what,
                          const std::vector<std::string>& endings) {
    const std::string name = lower_case(output);
    for (const std::string& ending : endings) {
        if (name.size() > ending.size() && name.ends_with(ending)) return {};
    }
    return fail(ErrorCode::bad_input, fmt::format("--output of a {} must end in {}, not '{}'", what,
                                                  fmt::join(endings, " or "), output));
}

Result<std::string> study_named(const std::string& word, const std::vector<std::string>& stems) {
    const std::string wanted = lower_case(word);
    std::vector<std::string> names = stems;
    for (const PanelEntry& entry : panels()) {
        const std::string stem(entry.stem);
        if (place_of(stems, stem) == stems.size()) continue;
        if (wanted == stem || wanted == lower_case(entry.title)) return stem;
        names.emplace_back(entry.title);
    }
    return fail(ErrorCode::bad_input, fmt::format("--study must be one of {}, not '{}'{}",
                                                  one_of(stems), word, did_you_mean(word, names)));
}

Result<glm::ivec2> read_size(const std::string& text) {
    const auto side = [](std::string_view digits) {
        const double number = parse_number(digits).value_or(0);
        const bool is_side = number >= 64 && number <= 8192 && number == std::floor(number);
        return is_side ? static_cast<int>(number) : 0;
    };
    const auto cross = std::min(text.find('x'), text.size());
    const int width = side(std::string_view(text).substr(0, cross));
    const int height = cross < text.size() ? side(std::string_view(text).substr(cross + 1)) : 0;
    if (width == 0 || height == 0) {
        return fail(
            ErrorCode::bad_input,
            fmt::format("--size must look like 1920x1080, each side from 64 to 8192, not '{}'",
                        text));
    }
    return glm::ivec2{width, height};
}

Result<Camera> read_camera(const std::string& text) {
    std::istringstream words(text);
    std::vector<float> numbers;
    for (std::string word; words >> word;) {
        const auto number = parse_number(word);
        if (!number) break;
        numbers.push_back(static_cast<float>(*number));
    }
    constexpr float farthest = 30'000;  // mm
    const bool is_camera = numbers.size() == 6 && words.eof() && std::abs(numbers[1]) <= 90
                           && numbers[2] > 0 && numbers[2] <= farthest;
    if (!is_camera) {
        return fail(ErrorCode::bad_input,
                    fmt::format("--camera must look like \"46 15 900 0 0 700\": yaw and pitch (-90 "
                                "to 90) in degrees, distance (up to {:.0f}) and target x, y, z in "
                                "mm, not '{}'",
                                farthest, text));
    }
    Camera camera;
    camera.yaw_rad = static_cast<float>(to_radians(Degrees{numbers[0]}).value);
    camera.pitch_rad = static_cast<float>(to_radians(Degrees{numbers[1]}).value);
    camera.distance_mm = numbers[2];
    camera.target = {numbers[3], numbers[4], numbers[5]};
    return camera;
}

std::string camera_words(const Camera& camera) {
    return fmt::format("{:.4f} {:.4f} {:.4f} {:.4f} {:.4f} {:.4f}",
                       to_degrees(Radians{camera.yaw_rad}).value,
                       to_degrees(Radians{camera.pitch_rad}).value, camera.distance_mm,
                       camera.target.x, camera.target.y, camera.target.z);
}

void add_allow_unknown(CLI::App& command, bool& allow_unknown) {
    command.add_flag("--allow-unknown", allow_unknown,
                     "Go on although keys in the file have no effect");
}

void add_paint(CLI::App& command, bool& paint_pupil) {
    command.add_flag("--paint-objective", paint_pupil,
                     "Rays in the colour of where they met the objective, with a key");
}

}  // namespace beamfork
