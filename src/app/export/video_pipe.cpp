#include "app/export/video_pipe.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

// An anonymous file for what a program complains of: a pipe could fill and stop it.
int complaint_file() {
    std::string name = (fs::temp_directory_path() / "beamfork-XXXXXX").string();
    const int file = ::mkstemp(name.data());
    if (file >= 0) ::unlink(name.c_str());
    return file;
}

std::string complaints_in(int file) {
    std::string text;
    std::array<char, 4096> buffer{};
    if (file < 0 || ::lseek(file, 0, SEEK_SET) < 0) return text;
    for (ssize_t count = 0; (count = ::read(file, buffer.data(), buffer.size())) > 0;)
        text.append(buffer.data(), static_cast<std::size_t>(count));
    constexpr std::size_t enough = 400;
    if (text.size() > enough) text = "… " + text.substr(text.size() - enough);
    while (!text.empty() && text.back() == '\n')
        text.pop_back();
    return text;
}

// In a process group of its own, so that Ctrl+C reaches this program alone, which then ends it in order.
int spawn_with_input(pid_t& process,
                     const std::vector<std::string>& words,
                     int input,
                     int complaints) {
    std::vector<char*> pointers;
    for (const std::string& word : words)
        pointers.push_back(const_cast<char*>(word.c_str()));
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, input, STDIN_FILENO);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, complaints, STDERR_FILENO);
    posix_spawnattr_t attributes;
    posix_spawnattr_init(&attributes);
    sigset_t usual;
    sigemptyset(&usual);
    sigaddset(&usual, SIGPIPE);
    posix_spawnattr_setsigdefault(&attributes, &usual);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETPGROUP | POSIX_SPAWN_SETSIGDEF);
    const int error =
        ::posix_spawnp(&process, pointers[0], &actions, &attributes, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    posix_spawnattr_destroy(&attributes);
    return error;
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
    std::array<int, 2> ends{-1, -1};
    made.complaints_ = complaint_file();
    if (made.complaints_ < 0 || ::pipe2(ends.data(), O_CLOEXEC) != 0)
        return fail(ErrorCode::impossible, "the system offers no pipe for the film");
    made.input_ = ends[1];
    std::signal(SIGPIPE, SIG_IGN);  // a program that ends early is an error to tell, not our end
    const std::string size = fmt::format("{}x{}", width, height);
    const int error = spawn_with_input(
        made.process_,
        video_arguments(program, made.draft_, output.extension().string(), size, fps), ends[0],
        made.complaints_);
    ::close(ends[0]);
    if (error != 0) {
        made.process_ = 0;
        return fail(ErrorCode::not_found,
                    fmt::format("a film needs the program '{}', which cannot be started ({}): "
                                "install it (on Debian: apt install ffmpeg), or write single "
                                "pictures with --frames FOLDER",
                                program, std::generic_category().message(error)));
    }
    return made;
}

VideoPipe::VideoPipe(VideoPipe&& other) noexcept
    : output_(std::move(other.output_)),
      draft_(std::exchange(other.draft_, {})),
      process_(std::exchange(other.process_, 0)),
      input_(std::exchange(other.input_, -1)),
      complaints_(std::exchange(other.complaints_, -1)) {}

VideoPipe::~VideoPipe() {
    if (process_ > 0) ::kill(process_, SIGKILL);
    end_input_and_wait();
    if (complaints_ >= 0) ::close(complaints_);
    std::error_code ignored;
    if (!draft_.empty()) fs::remove(draft_, ignored);
}

// ffmpeg's exit status; 0 too when there is none to wait for.
int VideoPipe::end_input_and_wait() {
    if (input_ >= 0) ::close(std::exchange(input_, -1));
    int status = 0;
    if (process_ > 0) {
        while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) {
        }
    }
    process_ = 0;
    return status;
}

tl::unexpected<Error> VideoPipe::refused() {
    end_input_and_wait();
    return fail(ErrorCode::impossible,
                "ffmpeg made no film of the pictures: " + complaints_in(complaints_),
                {output_.string(), 0});
}

Result<void> VideoPipe::add(const Image& image) {
    const auto* bytes = image.rgba.data();
    std::size_t left = image.rgba.size();
    while (left > 0) {
        const ssize_t written = ::write(input_, bytes, left);
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return refused();
        bytes += written;
        left -= static_cast<std::size_t>(written);
    }
    return {};
}

Result<void> VideoPipe::finish() {
    if (end_input_and_wait() != 0) return refused();
    std::error_code trouble;
    fs::rename(draft_, output_, trouble);
    if (trouble)
        return fail(ErrorCode::no_permission,
                    "the film cannot be written here: " + trouble.message(), {output_.string(), 0});
    draft_.clear();
    return {};
}

}  // namespace beamfork
