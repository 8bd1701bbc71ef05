#include "document/setup_in_page.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("text put into a page comes back word for word") {
    for (const char* text :
         {"", "a = 1\n", "\n\nb = \"</pre> &amp; & <x>\"\n", "é ± µ 3 < 4 > 2"}) {
        CAPTURE(text);
        CHECK(setup_in_page("<!DOCTYPE html>\n<p>" + setup_for_page(text) + "</p>") == text);
    }
}

TEST_CASE("a page without a setup holds none, and a setup is no page") {
    CHECK_FALSE(setup_in_page("<!DOCTYPE html>\n<pre>a</pre>").has_value());
    CHECK_FALSE(setup_in_page("<pre id=\"setup-file\">\nnever closed").has_value());
    CHECK(is_page("<!DOCTYPE html>\n"));
    CHECK_FALSE(is_page("beamfork = 1\n"));
}
