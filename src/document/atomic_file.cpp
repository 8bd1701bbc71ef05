#include "document/atomic_file.hpp"

#include <array>
#include <cerrno>
#include <system_error>

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

// What the system said, as an error about `path`.
tl::unexpected<Error> refused(const char* doing, const fs::path& path, int error) {
    ErrorCode code = ErrorCode::impossible;
    if (error == EACCES || error == EPERM || error == EROFS) code = ErrorCode::no_permission;
    if (error == ENOENT || error == ENOTDIR) code = ErrorCode::not_found;
    return fail(code, fmt::format("cannot {}: {}", doing, std::generic_category().message(error)),
                {path.string(), 0});
}

class OpenFile {
public:
    explicit OpenFile(int descriptor) : descriptor_(descriptor) {}
    ~OpenFile() { close_now(); }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    OpenFile(OpenFile&&) = delete;
    OpenFile& operator=(OpenFile&&) = delete;

    [[nodiscard]] int get() const { return descriptor_; }
    [[nodiscard]] bool is_open() const { return descriptor_ >= 0; }
    int close_now() {
        const int result = descriptor_ >= 0 ? ::close(descriptor_) : 0;
        descriptor_ = -1;
        return result;
    }

private:
    int descriptor_;
};

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

// Whether there is something to read, or the end, before that time is over. Files always have.
bool has_something(const OpenFile& file, std::chrono::milliseconds patience) {
    pollfd watched{file.get(), POLLIN, 0};
    int ready = 0;
    do {
        ready = ::poll(&watched, 1, static_cast<int>(patience.count()));
    } while (ready < 0 && errno == EINTR);
    return ready != 0;
}

// Where the bytes go in the end: links are followed, also one whose end does not exist yet.
fs::path end_of_links(fs::path path) {
    constexpr int most_links = 40;
    std::error_code none;
    for (int i = 0; i < most_links && fs::is_symlink(path, none); ++i) {
        const fs::path next = fs::read_symlink(path, none);
        path = next.is_absolute() ? next : path.parent_path() / next;
    }
    return path;
}

// A new file gets what the user's mask allows, as any program's would.
mode_t usual_mode() {
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666U & ~mask;
}

bool fill(OpenFile& file, std::string_view bytes, const struct stat* old) {
    // Only the system's administrator may give files away; for others the owner is right already.
    if (old != nullptr && ::fchown(file.get(), old->st_uid, old->st_gid) != 0 && errno != EPERM)
        return false;
    const mode_t mode = old != nullptr ? old->st_mode & 07777U : usual_mode();
    return ::fchmod(file.get(), mode) == 0 && write_all(file.get(), bytes)
           && ::fsync(file.get()) == 0 && file.close_now() == 0;
}

}  // namespace

Result<void> replace_file(const fs::path& path, std::string_view bytes) {
    const fs::path target = end_of_links(path);
    struct stat old {};
    const bool exists = ::stat(target.c_str(), &old) == 0;
    if (!exists && errno != ENOENT) return refused("save", path, errno);
    if (exists && !S_ISREG(old.st_mode)) {
        return fail(ErrorCode::impossible, "cannot save: this is not a plain file",
                    {path.string(), 0});
    }
    if (exists && ::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0)
        return refused("save", path, errno);

    const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
    std::string beside = (folder / ".beamfork-XXXXXX").string();
    OpenFile file(::mkstemp(beside.data()));
    if (!file.is_open()) return refused("save", path, errno);
    if (!fill(file, bytes, exists ? &old : nullptr)
        || ::rename(beside.c_str(), target.c_str()) != 0) {
        const int error = errno;
        ::unlink(beside.c_str());
        return refused("save", path, error);
    }
    // The new name itself must reach the disk too; a file system that cannot do this has saved the bytes.
    const OpenFile listing(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (listing.is_open()) ::fsync(listing.get());
    return {};
}

Result<std::string>
read_file(const fs::path& path, std::size_t most, std::chrono::milliseconds patience) {
    // Not to be held up by a pipe into which nobody writes.
    const OpenFile file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (!file.is_open()) return refused("open", path, errno);
    std::string bytes;
    std::array<char, 65536> buffer{};
    for (;;) {
        if (!has_something(file, patience)) {
            return fail(
                ErrorCode::bad_input,
                fmt::format("nothing came from this pipe or device for {} ms", patience.count()),
                {path.string(), 0});
        }
        const ssize_t count = ::read(file.get(), buffer.data(), buffer.size());
        if (count < 0 && (errno == EINTR || errno == EAGAIN)) continue;
        if (count < 0) return refused("read", path, errno);
        if (count == 0) return bytes;
        bytes.append(buffer.data(), static_cast<std::size_t>(count));
        if (bytes.size() > most) {
            return fail(
                ErrorCode::bad_input,
                fmt::format("expected a file of at most {} KiB, found a larger one", most / 1024),
                {path.string(), 0});
        }
    }
}

}  // namespace beamfork
