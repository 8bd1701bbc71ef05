#include "ui/kit/theme.hpp"

#include <algorithm>
#include <cmath>

#include "base/assets.hpp"
#include "base/contract.hpp"
#include "base/srgb.hpp"

namespace beamfork {

namespace {

constexpr float text_px = 15;
constexpr float large_px = 22;

// Latin with accents, Greek, Cyrillic (names), punctuation, super- and subscripts, arrows, mathematics. Of letters that
// nobody sees (base/shown.hpp) none: they are drawn as the question mark that stands for whatever is missing.
constexpr ImWchar glyphs[]{0x0020, 0x007E, 0x00A0, 0x00AC, 0x00AE, 0x024F, 0x0370, 0x03FF,
                           0x0400, 0x045F, 0x2000, 0x200A, 0x2010, 0x2027, 0x202F, 0x205F,
                           0x2070, 0x209F, 0x2190, 0x21FF, 0x2200, 0x22FF, 0};

void add_font(std::string_view name, float size, float oversample) {
    const auto bytes = asset(name);
    BEAMFORK_EXPECTS(bytes.has_value());
    ImFontConfig config;
    config.FontDataOwnedByAtlas =
        false;  // the atlas reads the program's own copy and leaves it alone
    config.OversampleH = oversample > 1.4F ? 1 : 2;
    config.OversampleV = 1;
    auto* data = const_cast<char*>(bytes->data());  // NOLINT(cppcoreguidelines-pro-type-const-cast)
    ImGui::GetIO().Fonts->AddFontFromMemoryTTF(data, static_cast<int>(bytes->size()), size, &config,
                                               glyphs);
}

double linear(std::uint32_t channel) { return linear_from_srgb(channel / 255.0); }

std::uint32_t display(double light) {
    return static_cast<std::uint32_t>(std::lround(255 * srgb_from_linear(light)));
}

// WCAG 2.2, definition of relative luminance.
double luminance(std::uint32_t srgb) {
    return 0.2126 * linear((srgb >> 16) & 255) + 0.7152 * linear((srgb >> 8) & 255)
           + 0.0722 * linear(srgb & 255);
}

ImU32 with_alpha(std::uint32_t srgb, float alpha) {
    return IM_COL32((srgb >> 16) & 255, (srgb >> 8) & 255, srgb & 255,
                    static_cast<int>(std::lround(alpha * 255)));
}

ImVec4 vec(Tone tone, float alpha = 1) {
    return ImGui::ColorConvertU32ToFloat4(colour(tone, alpha));
}

void set_colours(ImGuiStyle& style) {
    const auto set = [&](std::initializer_list<ImGuiCol> places, ImVec4 value) {
        for (const ImGuiCol place : places)
            style.Colors[place] = value;
    };
    set({ImGuiCol_Text}, vec(Tone::text));
    set({ImGuiCol_TextDisabled}, vec(Tone::text_dim));
    set({ImGuiCol_WindowBg}, vec(Tone::panel));
    set({ImGuiCol_ChildBg}, vec(Tone::panel, 0));
    set({ImGuiCol_PopupBg}, vec(Tone::panel, 0.98F));
    set({ImGuiCol_Border, ImGuiCol_Separator, ImGuiCol_TableBorderLight,
         ImGuiCol_TableBorderStrong},
        vec(Tone::line));
    set({ImGuiCol_FrameBg, ImGuiCol_Button, ImGuiCol_Header, ImGuiCol_TitleBg,
         ImGuiCol_TitleBgActive},
        vec(Tone::raised));
    set({ImGuiCol_FrameBgHovered, ImGuiCol_FrameBgActive, ImGuiCol_ButtonHovered,
         ImGuiCol_ButtonActive, ImGuiCol_HeaderHovered, ImGuiCol_HeaderActive},
        vec(Tone::raised_hot));
    set({ImGuiCol_CheckMark, ImGuiCol_SliderGrab, ImGuiCol_SliderGrabActive,
         ImGuiCol_SeparatorHovered, ImGuiCol_SeparatorActive},
        vec(Tone::accent));
    set({ImGuiCol_NavHighlight}, vec(Tone::accent, 0));  // the interface frames it itself
    set({ImGuiCol_TextSelectedBg}, vec(Tone::accent, 0.35F));
    set({ImGuiCol_ScrollbarBg}, vec(Tone::panel, 0));
    set({ImGuiCol_ScrollbarGrab}, vec(Tone::raised));
    set({ImGuiCol_ScrollbarGrabHovered, ImGuiCol_ScrollbarGrabActive}, vec(Tone::raised_hot));
    set({ImGuiCol_ModalWindowDimBg}, vec(Tone::ground, 0.6F));
}

void set_spacing(ImGuiStyle& style) {
    style.WindowPadding = {grid(3), grid(2)};
    style.FramePadding = {grid(2), grid(1)};
    style.ItemSpacing = {grid(2), grid(1)};
    style.ItemInnerSpacing = {grid(1), grid(1)};
    style.CellPadding = {grid(1), grid(0.5F)};
    style.IndentSpacing = grid(4);
    style.ScrollbarSize = grid(2.5F);
    style.GrabMinSize = grid(2.5F);
    style.WindowRounding = 0;
    style.ChildRounding = style.PopupRounding = style.FrameRounding = grid(1);
    style.GrabRounding = style.ScrollbarRounding = grid(1);
    style.WindowBorderSize = 0;
    style.PopupBorderSize = 1;
    style.ChildBorderSize = style.FrameBorderSize = 0;
    style.DisabledAlpha = 0.45F;
    style.HoverDelayNormal = 0.35F;
    style.SeparatorTextBorderSize = 1;
}

}  // namespace

bool set_theme(float scale) {
    ImFontAtlas& fonts = *ImGui::GetIO().Fonts;
    const float size = std::round(text_px * scale);
    const bool is_loaded = fonts.Fonts.Size == 3 && fonts.Fonts[0]->FontSize == size;
    if (!is_loaded) {
        fonts.Clear();
        add_font("fonts/regular.otf", size, scale);
        add_font("fonts/bold.otf", size, scale);
        add_font("fonts/bold.otf", std::round(large_px * scale), scale);
        fonts.Build();
    }
    ImGuiIO& io = ImGui::GetIO();
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    ImGuiStyle& style = ImGui::GetStyle();
    style = ImGuiStyle{};
    set_colours(style);
    set_spacing(style);
    return !is_loaded;
}

float grid(float steps) {
    return std::round(4 * steps * font(TextFace::regular)->FontSize / text_px);
}

ImFont* font(TextFace face) { return ImGui::GetIO().Fonts->Fonts[static_cast<int>(face)]; }

std::uint32_t srgb_hex(Tone tone) {
    switch (tone) {
    case Tone::ground: return 0x11161C;
    case Tone::panel: return 0x19202A;
    case Tone::raised: return 0x28323F;
    case Tone::raised_hot: return 0x36434F;
    case Tone::line: return 0x313C4A;
    case Tone::text: return 0xE8EDF2;
    case Tone::text_dim: return 0xA3AFBC;
    case Tone::accent: return 0xB9CCE0;
    case Tone::danger: return 0xFF9A6B;
    }
    return 0xFFFFFF;
}

double contrast(std::uint32_t srgb_a, std::uint32_t srgb_b) {
    const double a = luminance(srgb_a);
    const double b = luminance(srgb_b);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

std::uint32_t text_srgb_hex(ColourRole role) {
    // WCAG 2, level AA for text, is 4.5; the rest keeps it when all is dimmed for the night.
    constexpr double wanted = 4.8;
    std::uint32_t hex = srgb_hex(role);
    const std::uint32_t ground = srgb_hex(Tone::raised);
    // More light of the same hue: mixing white in would bring green and vermillion together for eyes without red.
    for (double gain = 1; contrast(hex, ground) < wanted; gain += 0.02) {
        const auto brighter = [&](int shift) {
            const double light = linear((srgb_hex(role) >> shift) & 255U);
            return display(std::min(1.0, gain * light + 0.02 * (gain - 1))) << shift;
        };
        hex = brighter(16) | brighter(8) | brighter(0);
    }
    return hex;
}

ImU32 colour(Tone tone, float alpha) { return with_alpha(srgb_hex(tone), alpha); }
ImU32 colour(ColourRole role, float alpha) { return with_alpha(srgb_hex(role), alpha); }
ImU32 text_colour(ColourRole role) { return with_alpha(text_srgb_hex(role), 1); }

}  // namespace beamfork
