#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <thread>

#include "document/atomic_file.hpp"
#include "document/sample.hpp"
#include "document/setup_file.hpp"

#include <doctest/doctest.h>

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beamfork;
namespace fs = std::filesystem;

namespace {

// A folder of its own for each case, gone afterwards.
class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "beamfork-test-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~Folder() {
        std::error_code none;
        fs::permissions(path_, fs::perms::owner_all, none);
        fs::remove_all(path_, none);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    Folder(Folder&&) = delete;
    Folder& operator=(Folder&&) = delete;

    [[nodiscard]] fs::path operator/(const std::string& name) const { return path_ / name; }
    [[nodiscard]] const fs::path& path() const { return path_; }
    [[nodiscard]] std::ptrdiff_t entries() const {
        return std::distance(fs::directory_iterator(path_), fs::directory_iterator());
    }

private:
    fs::path path_;
};

void put(const fs::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

// Root may do anything: acts as a user without rights for a while.
class AsNobody {
public:
    AsNobody() {
        if (was_root_) REQUIRE(seteuid(65534) == 0);
    }
    ~AsNobody() {
        if (was_root_ && seteuid(0) != 0) std::abort();
    }
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;
    AsNobody(AsNobody&&) = delete;
    AsNobody& operator=(AsNobody&&) = delete;

private:
    bool was_root_ = geteuid() == 0;
};

// No file may grow beyond so many bytes for a while, as on a disk that is full.
class FullDisk {
public:
    explicit FullDisk(rlim_t most) {
        REQUIRE(getrlimit(RLIMIT_FSIZE, &old_) == 0);
        const rlimit tight{most, old_.rlim_max};
        old_handler_ = std::signal(SIGXFSZ, SIG_IGN);
        REQUIRE(setrlimit(RLIMIT_FSIZE, &tight) == 0);
    }
    ~FullDisk() {
        setrlimit(RLIMIT_FSIZE, &old_);
        std::signal(SIGXFSZ, old_handler_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;
    FullDisk(FullDisk&&) = delete;
    FullDisk& operator=(FullDisk&&) = delete;

private:
    rlimit old_{};
    void (*old_handler_)(int) = SIG_DFL;
};

}  // namespace

TEST_CASE("a saved document loads again, and nothing else is left in the folder") {
    const Folder folder;
    const auto file = folder / "mine.train.toml";
    CHECK(save_file(file, new_document()).has_value());
    auto changed = apply(new_document(), SetTitle{"Second"});
    REQUIRE(changed.has_value());
    CHECK(save_file(file, *changed).has_value());
    CHECK(folder.entries() == 1);
    const auto loaded = load_file(file);
    REQUIRE(loaded.has_value());
    CHECK(loaded->document == *changed);
    CHECK(loaded->notices.empty());
}

TEST_CASE("a full disk leaves the old file as it was, and nothing beside it") {
    const Folder folder;
    const auto file = folder / "mine.train.toml";
    put(file, "old");
    Result<void> saved;
    {
        const FullDisk full(100);
        saved = save_file(file, new_document());
    }
    REQUIRE_FALSE(saved.has_value());
    CHECK(saved.error().code == ErrorCode::impossible);
    CHECK(saved.error().where.file == file.string());
    CHECK(bytes_of(file) == "old");
    CHECK(folder.entries() == 1);
}

TEST_CASE("without permission the old file stays and the error says so") {
    const Folder folder;
    const auto file = folder / "mine.train.toml";
    put(file, "old");
    fs::permissions(file, fs::perms::all);
    fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec
                                       | fs::perms::others_read | fs::perms::others_exec);
    Result<void> saved;
    {
        const AsNobody nobody;
        saved = save_file(file, new_document());
    }
    REQUIRE_FALSE(saved.has_value());
    CHECK(saved.error().code == ErrorCode::no_permission);
    CHECK(bytes_of(file) == "old");
    fs::permissions(folder.path(), fs::perms::owner_all | fs::perms::others_all);
    fs::permissions(file, fs::perms::none);
    const AsNobody nobody;
    const auto loaded = load_file(file);
    REQUIRE_FALSE(loaded.has_value());
    CHECK(loaded.error().code == ErrorCode::no_permission);
}

TEST_CASE("a missing folder, a file in the folder's place and a folder in the file's place are "
          "told apart") {
    const Folder folder;
    put(folder / "file", "old");
    const auto code = [](const fs::path& path) {
        const auto saved = save_file(path, new_document());
        REQUIRE_FALSE(saved.has_value());
        return saved.error().code;
    };
    CHECK(code(folder / "no/such/folder.train.toml") == ErrorCode::not_found);
    CHECK(code(folder / "file/mine.train.toml") == ErrorCode::not_found);
    CHECK(code(folder.path()) == ErrorCode::impossible);
    CHECK(code("/dev/full") == ErrorCode::impossible);
    CHECK(bytes_of(folder / "file") == "old");
    CHECK(folder.entries() == 1);
}

TEST_CASE("a link stays a link, and a file keeps its permissions") {
    const Folder folder;
    put(folder / "real.train.toml", "old");
    fs::permissions(folder / "real.train.toml", fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink("real.train.toml", folder / "link.train.toml");
    CHECK(save_file(folder / "link.train.toml", new_document()).has_value());
    CHECK(fs::is_symlink(folder / "link.train.toml"));
    CHECK(bytes_of(folder / "real.train.toml") == write_setup(new_document()));
    CHECK(fs::status(folder / "real.train.toml").permissions()
          == (fs::perms::owner_read | fs::perms::owner_write));
    fs::create_symlink("fresh.train.toml", folder / "ahead.train.toml");  // points at nothing yet
    CHECK(save_file(folder / "ahead.train.toml", new_document()).has_value());
    CHECK(fs::is_symlink(folder / "ahead.train.toml"));
    CHECK(load_file(folder / "fresh.train.toml").has_value());
}

TEST_CASE("files that are not there, not files or without end are refused when loading") {
    const Folder folder;
    const auto refused = [](const fs::path& path) {
        const auto loaded = load_file(path);
        REQUIRE_FALSE(loaded.has_value());
        CHECK(loaded.error().where.file == path.string());
        return loaded.error();
    };
    CHECK(refused(folder / "none.train.toml").code == ErrorCode::not_found);
    CHECK(refused(folder.path()).what.find("directory") != std::string::npos);
    CHECK(refused("/dev/zero").what.find("at most 4096 KiB") != std::string::npos);
    put(folder / "bad.train.toml", "beamfork = 1\ntitle = 3\n");
    CHECK(refused(folder / "bad.train.toml").where.line == 2);
}

TEST_CASE("a pipe into which nobody writes is not waited for without end") {
    const Folder folder;
    const fs::path pipe = folder / "pipe";
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    const auto read = read_file(pipe, 100, std::chrono::milliseconds(20));
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error().what.find("nothing came from this pipe") != std::string::npos);
}

TEST_CASE("whenever the program is killed, the saved file is whole: one document or the other") {
    const Folder folder;
    const auto file = folder / "mine.train.toml";
    const auto other = apply(new_document(), SetStory{std::string(15'000, 'x')});
    REQUIRE(other.has_value());
    REQUIRE(save_file(file, new_document()).has_value());
    std::mt19937 random(23);
    for (int round = 0; round < 200; ++round) {
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            for (bool is_other = true;; is_other = !is_other)
                if (!save_file(file, is_other ? *other : new_document())) _exit(1);
        }
        std::this_thread::sleep_for(std::chrono::microseconds(number_below(random, 5000)));
        REQUIRE(kill(child, SIGKILL) == 0);
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        CHECK(WIFSIGNALED(status));  // and had not failed before
        const auto loaded = load_file(file);
        REQUIRE(loaded.has_value());
        CHECK((loaded->document == new_document() || loaded->document == *other));
    }
}
