// Any bytes as a setup file.
#include "setup_laws.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::must_keep_reading_laws(beamfork::read_setup(fuzz::text_of(data, size), "fuzz"));
    return 0;
}
