#include "app/export/video_pipe.hpp"

#include <cerrno>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

// The last words of what it complained of.
std::string end_of_complaints(std::string text) {
    constexpr std::size_t enough = 400;
    if (text.size() > enough) text = "… " + text.substr(text.size() - enough);
    while (!text.empty() && text.back() == '\n')
        text.pop_back();
    return text;
}

}  // namespace

std::vector<std::string> video_arguments(const std::string& program,
                                         const fs::path& draft,
                                         const std::string& ending,
                                         const std::string& size,
                                         double fps) {
    std::vector<std::string> words{program, "-y",       "-loglevel", "error",
                                   "-f",    "rawvideo", "-pix_fmt",  "rgba",
                                   "-s",    size,       "-r",        fmt::format("{}", fps),
                                   "-i",    "-",        "-an"};
    const auto add = [&](std::initializer_list<const char*> more) {
        words.insert(words.end(), more.begin(), more.end());
    };
    add({"-vf", "scale=out_color_matrix=bt709:out_range=tv", "-pix_fmt", "yuv420p", "-colorspace",
         "bt709", "-color_primaries", "bt709", "-color_trc", "bt709", "-color_range", "tv"});
    if (ending == ".webm") {
        add({"-c:v", "libvpx-vp9", "-crf", "28", "-b:v", "0", "-row-mt", "1", "-f", "webm"});
    } else {
        add({"-c:v", "libx264", "-crf", "18", "-preset", "medium", "-movflags", "+faststart", "-f",
             "mp4"});
    }
    words.push_back(draft.string());
    return words;
}

Result<VideoPipe> VideoPipe::start(
    const fs::path& output, int width, int height, double fps, const std::string& program) {
    std::error_code none;
    if (fs::exists(output, none) && !fs::is_regular_file(output, none))
        return fail(ErrorCode::impossible, "cannot save: this is not a plain file",
                    {output.string(), 0});
    VideoPipe made;
    made.output_ = output;
    made.draft_ = output.string() + ".part";
    const int draft = ::open(made.draft_.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0666);
    if (draft < 0) {
        const std::string why = std::generic_category().message(errno);
        made.draft_.clear();
        return fail(ErrorCode::no_permission, "the film cannot be written here: " + why,
                    {output.string(), 0});
    }
    ::close(draft);
    const std::string size = fmt::format("{}x{}", width, height);
    const auto complain = [all = made.complaints_](const std::string& line) {
        *all += line + '\n';
    };
    auto started = ChildProcess::start(
        video_arguments(program, made.draft_, output.extension().string(), size, fps),
        {.line = complain, .end = {}}, ChildInput::bytes);
    if (!started)
        return fail(started.error().code,
                    fmt::format("a film needs the program '{}', which cannot be started ({}): "
                                "install it (on Debian: apt install ffmpeg), or write single "
                                "pictures with --frames FOLDER",
                                program, started.error().what));
    made.ffmpeg_ = *std::move(started);
    return made;
}

VideoPipe::VideoPipe(VideoPipe&& other) noexcept
    : output_(std::move(other.output_)),
      draft_(std::exchange(other.draft_, {})),
      complaints_(std::move(other.complaints_)),
      ffmpeg_(std::move(other.ffmpeg_)) {}

VideoPipe::~VideoPipe() {
    ffmpeg_.reset();
    std::error_code ignored;
    if (!draft_.empty()) fs::remove(draft_, ignored);
}

tl::unexpected<Error> VideoPipe::refused() {
    ffmpeg_->wait();
    return fail(ErrorCode::impossible,
                "ffmpeg made no film of the pictures: " + end_of_complaints(*complaints_),
                {output_.string(), 0});
}

Result<void> VideoPipe::add(const Image& image) {
    if (!ffmpeg_->write(image.rgba)) return refused();
    return {};
}

Result<void> VideoPipe::finish() {
    if (ffmpeg_->wait() != 0) return refused();
    std::error_code trouble;
    fs::rename(draft_, output_, trouble);
    if (trouble)
        return fail(ErrorCode::no_permission,
                    "the film cannot be written here: " + trouble.message(), {output_.string(), 0});
    draft_.clear();
    return {};
}

}  // namespace beamfork
