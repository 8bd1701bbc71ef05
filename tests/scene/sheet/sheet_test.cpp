// What the printed sheet says and draws, against closed forms; that it is complete in itself.
#include "document/setup_file.hpp"
#include "document/setup_in_page.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/sample_setups.hpp"
#include "scene/sheet/sheet.hpp"
#include "scene/sheet/sheet_outline.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::size_t count_of(const std::string& text, const std::string& words) {
    std::size_t count = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
        ++count;
    return count;
}

/// 200 mm of back focus less 20, 35 and 110: 35 mm of drawtube are left.
Setup easy_setup() {
    Setup setup = short_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {200};
    setup.parts[2].body.get<Spacer>().length = {20};
    setup.parts[3].body.get<PrismDiagonal>().stated_light_path = Millimetres{35};
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{110};
    setup.parts[5].body.get<EyepiecePair>().field_stop_depth = {0};
    return setup;
}

std::string steps_text(const Setup& setup) {
    std::string text;
    for (const SheetStep& step : sheet_steps(setup, report_of(setup, 64))) {
        text += step.heading + ": " + step.text + "\n";
        for (const std::string& item : step.items)
            text += item + "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("the sheet holds the setup's text, from which the document comes back equal") {
    Document document{.setup = cured_setup(), .top = {}, .chosen = {}, .last_lines = {}};
    document.setup.title = "</pre><script>alert('&amp;')</script> \"quoted\" ]]>";
    document.setup.story = "Two lines,\n& one <b>tag</b>";
    document.last_lines = "# 3 < 4 && 5 > 4";
    const std::string page = sheet_page(document, report_of(document.setup, 64));
    const auto text = setup_in_page(page);
    REQUIRE(text.has_value());
    CHECK(*text == write_setup(document));
    const auto back = read_setup(*text, "sheet.html");
    REQUIRE(back.has_value());
    CHECK(back->document == read_setup(write_setup(document), "plain").value().document);
    CHECK(back->document.setup == document.setup);
    CHECK_FALSE(has(page, "<script"));
    CHECK_FALSE(has(page, "<b>tag"));
}

TEST_CASE("the sheet needs nothing from outside and holds its drawings") {
    const Document document{.setup = short_setup(), .top = {}, .chosen = {}, .last_lines = {}};
    const Report report = report_of(document.setup, 64);
    const std::string page = sheet_page(document, report);
    CHECK(count_of(page, "<svg ") == 5);
    CHECK(count_of(page, "http") == count_of(page, "xmlns=\"http://www.w3.org/"));
    CHECK(count_of(page, "url(") == count_of(page, "url(#"));
    for (const char* word : {"src=", "href=", "@import", "javascript"})
        CHECK_FALSE(has(page, word));
    for (const Part& part : document.setup.parts)
        CHECK(has(page, part.name));
    for (const char* subject : {"Sun", "Lasers", "Heat in the head", "Weight", "local rules"})
        CHECK(has(page, subject));
    CHECK(has(sheet_page(document, report, {.night = true}), "class=\"night\""));
    CHECK(page == sheet_page(document, report));
}

TEST_CASE("what is taken along stands before the appendix: the steps where it works, else first of "
          "all what to "
          "change") {
    const auto pages = [](const Setup& setup) {
        const Document document{.setup = setup, .top = {}, .chosen = {}, .last_lines = {}};
        const std::string page = sheet_page(document, report_of(setup, 64));
        const std::size_t appendix = page.find("class=\"appendix\"");
        REQUIRE(appendix != std::string::npos);
        return std::pair{page.substr(0, appendix), page.substr(appendix)};
    };
    const auto [works, looked_up] = pages(easy_setup());
    CHECK(has(works, "Mount in this order"));
    CHECK_FALSE(has(works, "change first"));
    CHECK(has(looked_up, "Focus budget"));
    const auto [fails, later] = pages(short_setup());
    CHECK(has(fails, "This does not work yet: change first"));
    CHECK_FALSE(has(fails, "Mount in this order"));
    CHECK(has(later, "At the telescope, once it works"));
    for (const std::string& page : {works, fails}) {
        CHECK(has(page, "certified solar filter"));
        CHECK(count_of(page, "<svg ") == 1);
    }
}

TEST_CASE("a picture of the Moon lies in the page itself") {
    const Document document{.setup = short_setup(), .top = {}, .chosen = {}, .last_lines = {}};
    const std::string page = sheet_page(document, report_of(document.setup, 64),
                                        {.moon_png = {'f', 'o', 'o', 'b', 'a', 'r'}});
    CHECK(has(page, "href=\"data:image/png;base64,Zm9vYmFy\""));
    CHECK(count_of(page, "href=") == 1);
}

TEST_CASE("no word of a drawing covers what it tells of: it stands at the margin") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup, 64), PictureEffort{});
    const double margin = 500;
    SheetSvg svg(720, 300, "x", "x");
    PaperPlane plane = fit_plane({}, frame.bounds, {0, 0}, {margin, 300});
    draw_flat_focus(svg, frame, plane, margin);
    const std::string text = svg.text();
    CHECK(focus_margin(frame) > 40);
    std::size_t words = 0;
    for (std::size_t at = text.find("<text"); at != std::string::npos;
         at = text.find("<text", at + 1), ++words) {
        const std::size_t x = text.find("x=\"", at) + 3;
        CHECK(std::stod(text.substr(x)) > margin);
    }
    CHECK(words > 0);
}

TEST_CASE("the steps tell the drawtube's place, worked out by hand") {
    const std::string text = steps_text(easy_setup());
    CHECK(has(text, "Set it to 35.0 mm out"));  // 200 - 20 - 35 - 110
    CHECK(text.find("Adapter") < text.find("Prism diagonal"));
    CHECK(text.find("Prism diagonal") < text.find("Splitter head"));
    CHECK(text.find("Splitter head") < text.find("25 mm pair"));
}

TEST_CASE("a train that is short says by how much instead of where to stand") {
    Setup setup = easy_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {150};
    const std::string text = steps_text(setup);
    CHECK(has(text, "15.0 mm are missing inward"));  // 150 - 165
    CHECK_FALSE(has(text, "Dioptre seats"));
}

TEST_CASE("the seats share the difference of both eyes, in opposite ways") {
    Setup setup = easy_setup();
    auto& observer = setup.parts[6].body.get<Observer>();
    observer.left = {-3 / (1 - 0.0156 * 3)};  // -3 D at the eye, 15.6 mm behind the lens
    observer.right = {-1 / (1 - 0.0156)};
    const std::string text = steps_text(setup);
    // The drawtube serves the mean, -2 D; one dioptre is 25^2 / 1000 = 0.625 mm.
    CHECK(has(text, "left eye: −1.00 D, that is −0.6"));
    CHECK(has(text, "right eye: +1.00 D, that is +0.6"));
}

TEST_CASE("a drawing keeps proportions and stays on its paper") {
    const PaperPlane plane = fit_plane({}, {{-10, -20, 0}, {10, 20, 200}}, {5, 7}, {100, 60});
    // Seen from the side 200 x 40 mm: the width of 100 units decides, 0.5 units a mm.
    CHECK(near(plane.units_per_mm, 0.5, 1e-9));
    const auto low = plane.flat({0, -20, 0});
    const auto high = plane.flat({0, 20, 200});
    CHECK(near(high.x - low.x, 100, rounding));
    CHECK(near(low.y - high.y, 20, rounding));
    CHECK(near(low.x, 5, rounding));
    CHECK(near(0.5 * (low.y + high.y), 7 + 30, rounding));
}

TEST_CASE("an outline is the corners of what it surrounds") {
    const SheetSvg::Spots around =
        convex_outline({{1, 1}, {0, 0}, {4, 0}, {2, 0}, {4, 3}, {0, 3}, {3, 2}, {0, 0}});
    REQUIRE(around.size() == 4);
    double area = 0;  // by the shoelace formula
    for (std::size_t i = 0; i < around.size(); ++i) {
        const auto a = around[i];
        const auto b = around[(i + 1) % around.size()];
        area += 0.5 * (a.x * b.y - b.x * a.y);
    }
    CHECK(near(std::abs(area), 12, rounding));
}

TEST_CASE("no word can break the drawing it stands in") {
    CHECK(xml_text("a<b>&\"'\x01") == "a&lt;b&gt;&amp;&quot;&#39;\\u0001");
    SheetSvg svg(10, 10, "k", "<&>");
    svg.words({std::nan(""), 1}, "</svg>", "small", "start");
    CHECK(count_of(svg.text(), "</svg>") == 1);
    CHECK_FALSE(has(svg.text(), "nan"));
}

TEST_CASE("the sheet's arrow has its one head at its end") {
    SheetSvg svg(100, 100, "k", "arrow");
    svg.arrow({10, 50}, {90, 50}, "stroke");
    // A shaft and two barbs: all three end or begin at 90, and 10 is met by the shaft alone.
    CHECK(count_of(svg.text(), "<line") == 3);
    CHECK(count_of(svg.text(), "=\"90\"") + count_of(svg.text(), "=\"90.0\"") == 3);
    CHECK(count_of(svg.text(), "1=\"10\"") + count_of(svg.text(), "1=\"10.0\"") == 1);
}
