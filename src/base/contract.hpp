// A broken promise between two pieces of the program: a bug, thrown so that tests see it and the
// program can log it and stop. Not for bad input (base/error.hpp).
#pragma once

#include <stdexcept>
#include <string>

namespace beamfork {

class BrokenContract : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

[[noreturn]] inline void break_contract(const char* condition, const char* file, int line) {
    throw BrokenContract(std::string(file) + ":" + std::to_string(line) + ": expected "
                         + condition);
}

}  // namespace beamfork

// A macro because only a macro can quote the condition and its place.
#define BEAMFORK_EXPECTS(condition)                                                                \
    ((condition) ? void(0) : ::beamfork::break_contract(#condition, __FILE__, __LINE__))
