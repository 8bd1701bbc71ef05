// The words that several commands' options take, and options that several commands have.
#pragma once

#include <string>
#include <vector>

#include "base/error.hpp"
#include "scene/picture/camera.hpp"

#include <glm/glm.hpp>

// NOLINTNEXTLINE(readability-identifier-naming): it is the library's
namespace CLI {
class App;
}

namespace beamfork {

/// "open, whole, section": for help.
std::string one_of(const std::vector<std::string>& names);

/// The index of a word among names; their number when it is none of them.
std::size_t place_of(const std::vector<std::string>& names, const std::string& word);

/// An error with the nearest name when the option's word is none of them.
Result<void> check_word(const std::string& option,
                        const std::string& word,
                        const std::vector<std::string>& names);

/// An error unless a file to be written ends in what will be in it: ".png".
Result<void> check_ending(const std::string& output,
                          const std::string& what,
                          const std::vector<std::string>& endings);

/// The stem among `stems` of the panel that is called so: "fit", "Two eyes"; an error with the nearest name.
Result<std::string> study_named(const std::string& word, const std::vector<std::string>& stems);

/// "YAW PITCH DISTANCE X Y Z": degrees and mm, as scene/picture/camera.hpp means them.
Result<Camera> read_camera(const std::string& text);
std::string camera_words(const Camera& camera);

/// "1920x1080" as width and height, each 64 to 8192.
Result<glm::ivec2> read_size(const std::string& text);

/// The flag that all commands have which write something to take along.
void add_allow_unknown(CLI::App& command, bool& allow_unknown);

/// The flag of the commands that draw the 3D view.
void add_paint(CLI::App& command, bool& paint_pupil);

}  // namespace beamfork
