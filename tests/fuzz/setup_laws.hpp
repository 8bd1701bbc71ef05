// What holds of every text that may be a setup.
#pragma once

#include "document/setup_file.hpp"
#include "harness.hpp"

namespace fuzz {

/// A text that is read is written so that it reads back alike; one that is not is told of in a short line.
inline void must_keep_reading_laws(const beamfork::Result<beamfork::ReadSetup>& read) {
    if (!read) {
        must(!read.error().what.empty(), "a refusal has a sentence");
        must(to_text(read.error()).size() < 20'000, "a refusal is short");
        return;
    }
    const std::string written = write_setup(read->document);
    const auto again = beamfork::read_setup(written, "written");
    must(again.has_value(),
         "what is written can be read: " + (again ? "" : to_text(again.error())));
    must(again->document == read->document, "what is written reads back alike:\n" + written);
    must(write_setup(again->document) == written, "what is read is written alike");
}

}  // namespace fuzz
