// Any bytes as a printed sheet, which has a setup within; and any text put into one comes out again.
#include "document/setup_in_page.hpp"
#include "setup_laws.hpp"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes = fuzz::text_of(data, size);
    if (const auto text = beamfork::setup_in_page(bytes))
        fuzz::must_keep_reading_laws(beamfork::read_setup(*text, "fuzz"));
    const std::string page = "<!DOCTYPE html>\n" + beamfork::setup_for_page(bytes);
    fuzz::must(beamfork::is_page(page), "a sheet is a page");
    fuzz::must(beamfork::setup_in_page(page) == std::string(bytes),
               "a setup comes out of its page");
    return 0;
}
