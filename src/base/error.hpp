// What the world refuses: a bad file, no graphics, an impossible edit. Never for bugs (base/contract.hpp)
// and never for a poor setup (study/findings/findings.hpp).
#pragma once

#include <string>
#include <utility>

#include <tl/expected.hpp>

namespace beamfork {

enum class ErrorCode {
    bad_input,      ///< a file or argument does not say what it must
    newer_version,  ///< a file written by a later program
    not_found,      ///< no such file, part, glass or name
    no_permission,  ///< the system refuses to read or write
    impossible,     ///< an edit that cannot be applied to this document
    no_graphics     ///< no usable OpenGL
};

/// Where it went wrong. `line` counts from 1; 0 means that there is no line to point at.
struct Where {
    std::string file;
    int line = 0;
    bool operator==(const Where&) const = default;
};

/// `what` is one plain sentence: what was found, what was expected, the nearest known name.
struct Error {
    ErrorCode code = ErrorCode::bad_input;
    std::string what;
    Where where;
    bool operator==(const Error&) const = default;
};

/// "file:line: what" in one line, leaving out what is not known; as base/shown.hpp shows it.
std::string to_text(const Error& error);

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(ErrorCode code, std::string what, Where where = {}) {
    return tl::make_unexpected(Error{code, std::move(what), std::move(where)});
}

}  // namespace beamfork
