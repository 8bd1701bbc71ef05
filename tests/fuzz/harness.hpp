// What every harness needs: the input as text, and a way to say that a law is broken.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

/// Ends the run, as a memory fault would, when what must hold does not.
inline void must(bool holds, const std::string& law) {
    if (holds) return;
    std::fprintf(stderr, "broken: %s\n", law.c_str());
    std::abort();
}

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
