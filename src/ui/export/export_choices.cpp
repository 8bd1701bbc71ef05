#include <array>

#include "ui/export/export_dialog.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

void draw_switch(
    const ExportUi& ui, const char* name, const char* label, const char* help, bool& on) {
    ImGui::Checkbox(label, &on);
    ui.describe(name, label, help);
}

struct PixelSize {
    std::string_view words;
    int width;
    int height;
};
constexpr std::array pixel_sizes{
    PixelSize{"1280 × 720", 1280, 720}, PixelSize{"1920 × 1080", 1920, 1080},
    PixelSize{"3840 × 2160", 3840, 2160}, PixelSize{"7680 × 4320", 7680, 4320}};

void draw_sizes(const ExportUi& ui, ExportOrder& order, std::size_t offered) {
    std::array<std::string_view, pixel_sizes.size()> words;
    std::array<std::string_view, pixel_sizes.size()> helps;
    std::size_t chosen = offered;  // a size that is not offered here
    for (std::size_t i = 0; i < pixel_sizes.size(); ++i) {
        words[i] = pixel_sizes[i].words;
        helps[i] = i + 1 == pixel_sizes.size()
                       ? "8K: for large prints; takes about 2.5 GB of memory."
                       : "Width and height in pixels.";
        if (pixel_sizes[i].width == order.width) chosen = i;
    }
    if (chosen >= offered) chosen = 1;
    chosen = segments(ui, "export/size", std::span(words).first(offered),
                      std::span(helps).first(offered), chosen, true);
    order.width = pixel_sizes[chosen].width;
    order.height = pixel_sizes[chosen].height;
}

// What is drawn besides where the light goes; the dialog begins with what the window shows.
void draw_tale_choices(const ExportUi& ui, ExportOrder& order, const char* apart_help) {
    draw_switch(ui, "export/paint", "Paint the objective",
                "Rays in the colour of where they met the objective.", order.painted);
    draw_switch(ui, "export/motion", "Light in motion",
                "Packets of light along the rays, which are dim meanwhile.", order.light_moves);
    bool is_apart = order.apart > 0;
    draw_switch(ui, "export/apart", "Pull apart", apart_help, is_apart);
    if (is_apart != (order.apart > 0)) order.apart = is_apart ? 1.0F : 0.0F;
}

void draw_picture_choices(const ExportUi& ui, ExportOrder& order) {
    dim_text("The 3D view from where you stand now, as PNG.");
    draw_sizes(ui, order, pixel_sizes.size());
    draw_switch(ui, "export/names", "Names of the parts", "Words that float by the parts.",
                order.names);
    draw_switch(ui, "export/white", "White ground", "Light as ink on white: for print.",
                order.white_ground);
    draw_switch(
        ui, "export/transparent", "No ground",
        "See-through where nothing is: exact over black or, with a white ground, over white.",
        order.transparent);
    draw_tale_choices(ui, order, "Each part by itself; without light.");
}

void draw_film_choices(const ExportUi& ui, ExportOrder& order) {
    constexpr std::array<std::string_view, 3> lengths{"6 s", "12 s", "24 s"};
    constexpr std::array<double, 3> seconds{6, 12, 24};
    constexpr std::array<std::string_view, 3> length_helps{"Quickly round.", "Round at ease.",
                                                           "Slowly round, to speak to."};
    dim_text("Once round at 30 pictures a second; the program ffmpeg makes one file of them.");
    draw_sizes(ui, order, 3);
    std::size_t length = 1;
    for (std::size_t i = 0; i < seconds.size(); ++i)
        if (seconds[i] == order.seconds) length = i;
    order.seconds = seconds[segments(ui, "export/seconds", lengths, length_helps, length)];
    draw_switch(ui, "export/whole", "Round the whole train",
                "Else close up, round what hangs on the drawtube.", order.whole_train);
    draw_switch(ui, "export/names", "Names of the parts", "Words that float by the parts.",
                order.names);
    draw_switch(ui, "export/white", "White ground", "Light as ink on white.", order.white_ground);
    draw_tale_choices(ui, order, "The parts go apart and come back once; no light meanwhile.");
    draw_switch(ui, "export/frames", "Single pictures in a folder",
                "PNG pictures with numbers instead of one file: needs no other program.",
                order.single_pictures);
}

}  // namespace

void draw_export_choices(const ExportUi& ui, ExportOrder& order) {
    switch (order.kind) {
    case ExportKind::sheet:
        dim_text("One page to print and take to the telescope; opens in any browser.");
        draw_switch(ui, "export/night", "Red on black",
                    "To read on a screen in the dark; not for print.", order.night);
        break;
    case ExportKind::picture: draw_picture_choices(ui, order); break;
    case ExportKind::model:
        dim_text("A solid model for other programs: glTF 2.0, metres, y up.");
        draw_switch(ui, "export/light", "With the beams", "Both eyes' light as lines.",
                    order.light);
        draw_switch(ui, "export/shells", "Tubes whole",
                    "Else they are cut open lengthwise, so that one sees into them.",
                    order.whole_shells);
        break;
    case ExportKind::film: draw_film_choices(ui, order); break;
    }
}

}  // namespace beamfork
