#include <cstdlib>
#include <optional>
#include <string>

#include "base/user_folders.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// A variable of the environment while a test runs; nullptr: not set.
class Variable {
public:
    Variable(const char* name, const char* value) : name_(name) {
        if (const char* now = std::getenv(name)) before_ = now;
        set(value);
    }
    ~Variable() { set(before_ ? before_->c_str() : nullptr); }
    Variable(const Variable&) = delete;
    Variable& operator=(const Variable&) = delete;
    Variable(Variable&&) = delete;
    Variable& operator=(Variable&&) = delete;

private:
    void set(const char* value) {
        if (value == nullptr) {
            unsetenv(name_);
        } else {
            setenv(name_, value, 1);
        }
    }
    const char* name_;
    std::optional<std::string> before_;
};

}  // namespace

// XDG Base Directory Specification, version 0.8, "Environment variables" and "Basics".
TEST_CASE("without variables the folders lie where the specification says below the home") {
    const Variable home("HOME", "/home/me");
    for (const char* unset : {static_cast<const char*>(nullptr), ""}) {
        const Variable config("XDG_CONFIG_HOME", unset);
        const Variable state("XDG_STATE_HOME", unset);
        CHECK(config_folder() == "/home/me/.config/beamfork");
        CHECK(state_folder() == "/home/me/.local/state/beamfork");
    }
}

TEST_CASE("a variable with an absolute path wins, one with a relative path is ignored") {
    const Variable home("HOME", "/home/me");
    const Variable config("XDG_CONFIG_HOME", "/elsewhere/config");
    const Variable state("XDG_STATE_HOME", "state");
    CHECK(config_folder() == "/elsewhere/config/beamfork");
    CHECK(state_folder() == "/home/me/.local/state/beamfork");
}

TEST_CASE("who has no home has no folders") {
    const Variable home("HOME", nullptr);
    const Variable config("XDG_CONFIG_HOME", nullptr);
    const Variable state("XDG_STATE_HOME", nullptr);
    CHECK(config_folder().empty());
    CHECK(state_folder().empty());
}
