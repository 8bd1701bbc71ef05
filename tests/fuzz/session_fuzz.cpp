// Any bytes as the file that keeps the window's arrangement, and as a copy of unsaved work.
#include "app/desk/recovery.hpp"
#include "app/desk/session_store.hpp"
#include "setup_laws.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(fuzz::text_of(data, size));
    const auto stored = beamfork::read_session(bytes);
    fuzz::must(stored.session.layout.text_scale > 0, "letters have a size");
    if (const auto lost = beamfork::read_lost_work(bytes, "copy"))
        fuzz::must_keep_reading_laws(beamfork::read_setup(write_setup(lost->document), "fuzz"));
    return 0;
}
