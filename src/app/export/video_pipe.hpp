// Pictures one after another into the program ffmpeg, which makes a film of them. The film appears under its name
// whole or not at all.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "app/export/child_process.hpp"
#include "render/image.hpp"

namespace beamfork {

class VideoPipe {
public:
    /// Starts ffmpeg for pictures of that size; the form follows from the file's ending, .mp4 or .webm. `program` is
    /// looked for along PATH. Errors: not_found with how to get it.
    static Result<VideoPipe> start(const std::filesystem::path& output,
                                   int width,
                                   int height,
                                   double fps,
                                   const std::string& program = "ffmpeg");

    VideoPipe(const VideoPipe&) = delete;
    VideoPipe& operator=(const VideoPipe&) = delete;
    VideoPipe(VideoPipe&& other) noexcept;
    VideoPipe& operator=(VideoPipe&&) = delete;
    /// Without finish(): ends ffmpeg and removes what there is of the film.
    ~VideoPipe();

    /// Error with ffmpeg's own words when it does not take the picture.
    Result<void> add(const Image& image);
    /// Waits for the last picture and gives the film its name.
    Result<void> finish();

private:
    VideoPipe() = default;
    tl::unexpected<Error> refused();

    std::filesystem::path output_;
    std::filesystem::path draft_;
    std::shared_ptr<std::string> complaints_ = std::make_shared<std::string>();
    std::unique_ptr<ChildProcess> ffmpeg_;
};

/// ffmpeg's arguments, the program's name first. Colours are those of HD television (ITU-R BT.709).
std::vector<std::string> video_arguments(const std::string& program,
                                         const std::filesystem::path& draft,
                                         const std::string& ending,
                                         const std::string& size,
                                         double fps);

}  // namespace beamfork
